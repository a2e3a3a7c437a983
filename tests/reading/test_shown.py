from __future__ import annotations

import pytest

from proofkit.reading.shown import is_shown
from tests.marked import example

SHOWN = [
    "They crossed the bay in a ›dhow‹, which is a boat with one sail.",
    "A ›dhow‹ is a kind of boat.",
    "He came in a ›dhow‹ – a boat with one tall sail.",
    "He came in a ›dhow‹, a small boat with one sail.",
    "He came in a ›dhow‹ (a sort of boat).",
    "It was a boat called a ›dhow‹.",
    "“We call it a ›dhow‹,” said Juma.",
    "“What is ›remorse‹?” asked Pip. ›Remorse‹ is what you feel when you are sorry.",
    "“To ›perspire‹ means to sweat,” said Nan.",
    "She was ›furious‹. She was so angry that she stamped her feet.",
    "The hen ran off, and they had to ›scurry‹ after it.",
]
HIDDEN = [
    "They crossed the bay in a ›dhow‹.",
    "He took a ›dhow‹, a net and a basket.",
    "He had a mean, ›furtive‹ look.",
    "The ›dhow‹ was old and leaked.",
    "He came in a ›dhow‹. On the far side of the bay, a long way off, lay another boat.",
    "“Did you mean ›remorse‹?” asked Pip.",
    "The rope was ›taut‹, and Pip meant to cut it.",
]


@pytest.mark.parametrize("marked", SHOWN)
def test_the_text_makes_the_word_plain(marked: str) -> None:
    read = example(marked)
    assert any(is_shown(read.book.page(1).prose, p.span, p.quote.lower()) for p in read.places)


@pytest.mark.parametrize("marked", HIDDEN)
def test_the_text_leaves_the_word_dark(marked: str) -> None:
    read = example(marked)
    (place,) = read.places
    assert not is_shown(read.book.page(1).prose, place.span, place.quote.lower())
