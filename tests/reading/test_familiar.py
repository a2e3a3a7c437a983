from __future__ import annotations

import pytest

from proofkit.reading.familiar import WordList, is_listed, listed_words, parts


def familiar(word: str, which: WordList = WordList.SPACHE) -> bool:
    return all(is_listed(part, which) for part in parts(word))


def test_the_lists_have_the_words_that_the_packages_have() -> None:
    assert len(listed_words(WordList.SPACHE)) == 1063
    assert len(listed_words(WordList.DALE_CHALL)) == 2942


@pytest.mark.parametrize(
    "word",
    [
        "The",
        "hopped",
        "hopping",
        "cried",
        "bigger",
        "happily",
        "babies",
        "mice",
        "went",
        "eaten",
        "children’s",
        "she’ll",
        "couldn't",
        "colours",
        "grey",
        "mums",
        "1,000",
        "tea-party",
    ],
)
def test_forms_of_listed_words(word: str) -> None:
    assert familiar(word, WordList.DALE_CHALL)


@pytest.mark.parametrize("word", ["whirr", "enormous", "implored", "sieve", "ding-zzup"])
def test_words_that_are_off_the_short_list(word: str) -> None:
    assert not familiar(word)


def test_the_longer_list_has_more() -> None:
    assert not familiar("sparrow")
    assert familiar("sparrow", WordList.DALE_CHALL)


def test_nearly_all_of_the_short_list_is_on_the_long_one() -> None:
    off = [
        word for word in listed_words(WordList.SPACHE) if not familiar(word, WordList.DALE_CHALL)
    ]
    assert len(off) < 0.06 * len(listed_words(WordList.SPACHE))
