"""Make ``dictionary.txt.gz`` from SCOWL, the word lists made for spelling checkers.

    python wordlists/make_dictionary.py /usr/share/dict/scowl

The folder is the one that Debian's package ``scowl`` (2020.12.07-2) unpacks; its notice is kept in
``dictionary-licence.txt``. Words are taken up to SCOWL's size 70, its author's "large": size 80 adds
real misspellings ("belive", "publically", "wich"), and size 60 lacks words that stories need. Of
size 70, words are left out that lie one slip from a word a thousand times more frequent ("stroy",
"diaster", "calender"): in a picture book they are that slip. A rare word that is a well-known name in
lower case ("english" in billiards) is left out as well.

The file has one block for each kind of word, a line ``# kind`` and then one word a line:

    both           words and contractions of British and American English
    british        only British (-ise as well as -ize), with the variants called nearly equal
    american       only American, likewise
    unusual        spellings that dictionaries call less usual, of either English
    names          words that take a capital
    abbreviations  written just so: Mr, km, TV
"""

from __future__ import annotations

import gzip
import sys
import unicodedata
from collections.abc import Iterable
from pathlib import Path

from rapidfuzz import process
from rapidfuzz.distance import OSA
from wordfreq import zipf_frequency

HERE = Path(__file__).parent
LARGEST = 70
LARGEST_UNUSUAL = 60
# Plurals of pronouns, a Hebrew letter: in a story each is a contraction without its apostrophe.
NOT_IN_STORIES = frozenset({"ain", "heres", "hes", "shes", "whats"})
# Frequencies are Zipf values, powers of ten: 3 apart is a thousand times.
FREQUENT = 4.0
THOUSAND_TIMES = 3.0
WELL_KNOWN = 3.9


def main(folder: Path) -> None:
    """Read the lists in ``folder`` and write the dictionary beside this script."""
    plain = ("words", "contractions")
    own = (HERE / "dictionary-supplement.txt").read_text("utf-8").split("\n")
    supplement = {word for word in own if word and not word.startswith("#")}
    english = words(folder, ("english",), plain)
    british = words(folder, ("british", "british_z", "british_variant_1"), plain)
    american = words(folder, ("american", "variant_1"), plain)
    large = words(folder, ("english", "british", "american"), plain, smallest=LARGEST)
    slips = slips_among(large, (english | british | american) - large) | NOT_IN_STORIES
    slips |= names_in_lower_case(folder) - supplement
    both = ((english | (british & american)) - slips) | supplement
    unusual = words(folder, ("variant_2", "british_variant_2"), plain, largest=LARGEST_UNUSUAL)
    blocks = {
        "both": both,
        "british": british - both - slips,
        "american": american - both - slips,
        "unusual": unusual - both - british - american,
        "names": words(folder, kinds=("upper", "proper-names")),
        "abbreviations": words(folder, kinds=("abbreviations",)),
    }
    lines = [line for kind, found in blocks.items() for line in (f"# {kind}", *sorted(found))]
    packed = gzip.compress("\n".join(lines).encode(), mtime=0)
    (HERE / "dictionary.txt.gz").write_bytes(packed)


def words(
    folder: Path,
    classes: Iterable[str] = ("english", "british", "american", "variant_1", "british_variant_1"),
    kinds: Iterable[str] = ("words",),
    *,
    smallest: int = 0,
    largest: int = LARGEST,
) -> set[str]:
    """The words of SCOWL's lists of these classes, kinds and sizes; possessives are left off."""
    found: set[str] = set()
    for name in (f"{a}-{b}" for a in classes for b in kinds):
        for path in folder.glob(f"{name}.*"):
            if smallest <= int(path.suffix[1:]) <= largest:
                found.update(path.read_text("utf-8").split())
    kept = {word for word in found if not word.endswith("'s")} | (found & {"let's", "it's"})
    return kept | {without_accents(word) for word in kept}


def without_accents(word: str) -> str:
    """The word as English often writes it: fiance, melee, creche."""
    letters = unicodedata.normalize("NFKD", word)
    return "".join(letter for letter in letters if not unicodedata.combining(letter))


def names_in_lower_case(folder: Path) -> set[str]:
    """Words beyond SCOWL's size 40 that are the lower case of a well-known name."""
    well_known = words(folder, kinds=("upper", "proper-names"), largest=60)
    common = words(folder, kinds=("words",), largest=40)
    return {
        name.lower()
        for name in well_known
        if name.lower() not in common and zipf_frequency(name, "en") >= WELL_KNOWN
    }


def slips_among(rare: set[str], usual: set[str]) -> set[str]:
    """Those of ``rare`` that are one slip from a usual word a thousand times more frequent."""
    frequent = [w for w in usual if len(w) > 3 and zipf_frequency(w, "en") >= FREQUENT]
    slips = set()
    for word in rare - usual:
        if len(word) > 3:
            near = process.extract(word, frequent, scorer=OSA.distance, score_cutoff=1, limit=None)
            most = max((zipf_frequency(other, "en") for other, *_ in near), default=0.0)
            if most - zipf_frequency(word, "en", minimum=1.0) >= THOUSAND_TIMES:
                slips.add(word)
    return slips


if __name__ == "__main__":
    main(Path(sys.argv[1]))
