from __future__ import annotations

import pytest

from proofkit.reading.syllables import by_vowels, listed, syllables


@pytest.mark.parametrize(
    ("word", "count"),
    [
        ("goose", 1),
        ("Tuesday", 2),
        ("umbrella", 3),
        ("caterpillar", 4),
        ("STOP!", 1),
        ("“Boo!”", 1),
    ],
)
def test_listed_words_whatever_stands_around_them(word: str, count: int) -> None:
    assert syllables(word) == count


@pytest.mark.parametrize(
    "word", ["1,000", "7", "3rd", "£5", "5.30", "Mr.", "Mr", "Mrs", "Dr.", "TV", "a.m."]
)
def test_figures_and_abbreviations_are_one_syllable(word: str) -> None:
    assert syllables(word) == 1


@pytest.mark.parametrize(
    ("word", "count"),
    [
        ("whirr-tick,", 2),
        ("merry-go-round", 4),
        ("10-year-old", 3),
        ("don’t", 1),
        ("couldn't", 2),
        ("Tock’s", 1),
        ("fox’s", 2),
        ("goose’s", 2),
        ("runnin’", 2),
        ("’twas", 1),
        ("O’Brien", 3),
        ("stopped—and", 2),
    ],
)
def test_hyphens_dashes_and_apostrophes(word: str, count: int) -> None:
    assert syllables(word) == count


@pytest.mark.parametrize("word", ["…", "—", "“", ""])
def test_marks_alone_have_none(word: str) -> None:
    assert syllables(word) == 0


@pytest.mark.parametrize(
    ("word", "count"),
    [
        ("Whoooosh!", 1),
        ("Nooooo", 1),
        ("Baa!", 1),
        ("Baaaa", 1),
        ("Shhh", 1),
        ("Brrrr", 1),
        ("Boing!", 1),
    ],
)
def test_sounds(word: str, count: int) -> None:
    assert syllables(word) == count


@pytest.mark.parametrize(
    ("word", "count"),
    [
        ("pyjamas", 3),
        ("nappy", 2),
        ("wellies", 2),
        ("conkers", 2),
        ("snowdrops", 2),
        ("ladybird", 3),
        ("aeroplane", 3),
        ("marvellous", 3),
        ("meerkats", 2),
        ("swooshing", 2),
        ("snuffled", 2),
        ("gloopiest", 3),
        ("squidgier", 3),
        ("toadlike", 2),
        ("lakeboat", 2),
        ("fireboat", 2),
        ("Grizzlewick", 3),
        ("café", 2),
        ("naïve", 2),
    ],
)
def test_words_that_the_dictionary_lacks_or_nearly(word: str, count: int) -> None:
    assert syllables(word) == count


def test_the_list_is_searched_from_its_first_word_to_its_last() -> None:
    assert listed("'bout") == 1
    assert listed("zywicki") == 3
    assert listed("zzzz") is None
    assert listed("# how") is None


def test_every_word_with_a_letter_has_a_syllable() -> None:
    assert by_vowels("hmph") == 1
    assert by_vowels("the") == 1
