from __future__ import annotations

import pytest

from proofkit.reading.verse.scheme import forms_of, kinds_of, letters_of, pairs_of, schemed
from proofkit.settings import English


def ends(words: str) -> list[tuple[str, ...]]:
    return [(word,) for word in words.split()]


@pytest.mark.parametrize(
    ("words", "form"),
    [
        ("hat cat moon spoon", "AABB"),
        ("hat moon cat spoon", "ABAB"),
        ("hat moon tree spoon", "xAxA"),
        ("hat moon spoon cat", "ABBA"),
        ("hat cat moon spoon rat", "AABBA"),
        ("hat cat tree moon spoon sea", "AABCCB"),
        ("hat moon tree spoon dog June", "xAxAxA"),
    ],
)
def test_the_form_of_a_stanza(words: str, form: str) -> None:
    kinds = kinds_of(ends(words), English.BRITISH)
    found = schemed([kinds], [len(words.split())])
    assert found.forms[len(words.split())] == form
    assert found.clear


def test_letters_follow_the_rhymes_that_are_there() -> None:
    kinds = kinds_of(ends("hat moon tree spoon"), English.BRITISH)
    assert letters_of(4, kinds, None) == "ABCB"
    near = kinds_of(ends("time mine moon spoon"), English.BRITISH)
    assert letters_of(4, near, None) == "ABCC"
    assert letters_of(4, near, "AABB") == "AABB"


def test_pairs_are_with_the_nearest_line_before() -> None:
    assert pairs_of("xAxAxA") == ((1, 3), (3, 5))
    assert pairs_of("AABBA") == ((0, 1), (2, 3), (1, 4))


def test_long_stanzas_are_made_of_short_ones() -> None:
    assert forms_of(10) == ("AABBCCDDEE", "xAxAxBxBxx", "ABABCDCDxx")


def test_words_that_do_not_rhyme_have_no_scheme() -> None:
    kinds = kinds_of(ends("hat moon tree dog"), English.BRITISH)
    assert not schemed([kinds], [4]).clear
