"""The word lists of the National curriculum in England (Department for Education, 2013, English
Appendix 1: Spelling; Crown copyright, Open Government Licence) are whole.

The appendix itself speaks of "the 100 words in each list" for Years 3–4 and 5–6; the lists for Years 1
and 2 were counted in three published copies.
"""

from __future__ import annotations

import pytest

from proofkit.words.data import wordlist

LISTS = {
    "nc-year1-common-exception-words.txt": 45,
    "nc-year2-common-exception-words.txt": 64,
    "nc-years3-4-statutory-words.txt": 100,
    "nc-years5-6-statutory-words.txt": 100,
}


def entries(name: str) -> list[str]:
    """The words of a list, as printed: "accident(ally)"."""
    lines = wordlist(name).read_text(encoding="utf-8").splitlines()
    return [line for line in lines if line and not line.startswith("#")]


@pytest.mark.parametrize(("name", "count"), LISTS.items(), ids=LISTS)
def test_every_list_has_its_words_once(name: str, count: int) -> None:
    assert len(entries(name)) == count
    assert len(set(entries(name))) == count


def test_the_lists_hold_what_is_on_them_and_not_what_is_said_to_be() -> None:
    everything = {entry for name in LISTS for entry in entries(name)}
    assert {"the", "because", "accident(ally)", "rhythm"} <= everything
    # Some published copies add it; the appendix doesn't.
    assert "Wednesday" not in everything
