"""Nothing in the National curriculum's word lists is misspelt in British English.

Source: Department for Education (England), English Appendix 1: Spelling, 2013; Crown copyright, Open
Government Licence. By VarCon 2020.12.07 exactly seven of the words are spelt otherwise in America.
"""

from __future__ import annotations

import re

import pytest

from proofkit.settings import English
from proofkit.words.dictionary import dictionary
from tests.outside.test_national_curriculum import LISTS, entries

BRITISH, AMERICAN = dictionary(English.BRITISH), dictionary(English.AMERICAN)
DIFFER = {
    *("centre", "favourite", "criticise", "marvellous", "neighbour", "programme", "recognise"),
}  # fmt: skip
_ENDINGS = re.compile(r"(\w+)\(([\w,-]+)\)")


def spellings(entry: str) -> list[str]:
    """The words of one entry: accident(ally), equip(-ped,-ment), busy/business, woman/women."""
    optional = _ENDINGS.fullmatch(entry)
    if optional is None:
        return entry.split("/")
    stem, endings = optional.groups()
    return [stem, *(stem + ending.removeprefix("-") for ending in endings.split(","))]


WORDS = sorted({word for name in LISTS for entry in entries(name) for word in spellings(entry)})


def test_entries_are_unfolded() -> None:
    assert {"accidentally", "equipped", "equipment", "business", "women", "forwards"} <= {*WORDS}
    assert all(re.fullmatch(r"\w+", word) for word in WORDS)


@pytest.mark.parametrize("word", WORDS)
def test_british_english_has_the_word(word: str) -> None:
    assert BRITISH.knows(word)
    assert BRITISH.knows(word.capitalize())


def test_exactly_seven_differ_in_american_english() -> None:
    assert {word for word in WORDS if not AMERICAN.knows(word)} == DIFFER
    assert all(AMERICAN.knows_elsewhere(word) for word in DIFFER)
