"""Who speaks in a sentence: somebody in the story, or the one who tells it."""

from __future__ import annotations

import pytest

from proofkit.words.persons import sounds_spoken, told_in_past
from tests.marked import book_of


@pytest.mark.parametrize(
    "sentence", ["I am late.", "The soup is hot.", "Stay in the boat.", "What a big fish!"]
)
def test_spoken_in_a_story_of_the_past(sentence: str) -> None:
    assert sounds_spoken(sentence, past=True)


@pytest.mark.parametrize("sentence", ["The mole smiled.", "Then she ran home.", "It was cold."])
def test_told_in_a_story_of_the_past(sentence: str) -> None:
    assert not sounds_spoken(sentence, past=True)


def test_in_a_story_of_the_present_only_persons_tell() -> None:
    assert not sounds_spoken("The soup is hot.", past=False)
    assert sounds_spoken("My soup is hot.", past=False)


def test_told_in_past() -> None:
    assert told_in_past(book_of("The mole sat down. He was sad.", "She said, “Supper is hot.”"))
    assert not told_in_past(book_of("The mole sits down. He is sad. He has lost his hat."))
