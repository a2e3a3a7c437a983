"""A second opinion on spelling: hunspell's dictionaries, where a machine has them.

The dictionaries are those of the packages hunspell-en-gb and hunspell-en-us (Debian 12, LibreOffice's
7.5.0), read with spylls (PyPI). Either may be absent: then the test is skipped.
"""

from __future__ import annotations

from pathlib import Path
from typing import Protocol

import pytest
from wordfreq import top_n_list

from proofkit.settings import English
from proofkit.words.dictionary import dictionary

FOLDERS = (Path("/usr/share/hunspell"), Path("/usr/share/myspell/dicts"), Path("/Library/Spelling"))
# Frequent forms that only one of the two knows: abbreviations, slang, loanwords of the news.
AGREEMENT = 0.98


class Speller(Protocol):
    def lookup(self, word: str) -> bool: ...


def hunspell(english: English) -> Speller:
    spylls = pytest.importorskip("spylls.hunspell", reason="spylls is not installed")
    name = english.code.replace("-", "_")
    for folder in FOLDERS:
        if (folder / f"{name}.dic").exists():
            speller: Speller = spylls.Dictionary.from_files(str(folder / name))
            return speller
    pytest.skip(f"no hunspell dictionary {name} on this machine")


# spylls leaves the files that it read for the collector to close.
@pytest.mark.filterwarnings("ignore:unclosed file:ResourceWarning")
@pytest.mark.filterwarnings("ignore::pytest.PytestUnraisableExceptionWarning")
@pytest.mark.slow
@pytest.mark.parametrize("english", English)
def test_both_know_the_frequent_words(english: English) -> None:
    ours, theirs = dictionary(english), hunspell(english)
    words = [w for w in top_n_list("en", 20_000) if w.isalpha() and w.isascii() and len(w) > 3]
    known = {w for w in words if ours.knows(w) or ours.as_name(w)}
    theirs_know = {w for w in words if theirs.lookup(w) or theirs.lookup(w.capitalize())}
    shares = len(known & theirs_know) / len(theirs_know), len(known & theirs_know) / len(known)
    print(f"\n{english}: ours have {shares[0]:.3f} of theirs, theirs {shares[1]:.3f} of ours")
    assert min(shares) >= AGREEMENT
