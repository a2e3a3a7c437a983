"""Sounds that stand alone (Splash! Tap, tap, tap.): in italics, in marks or plain."""

from __future__ import annotations

import re
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Page, Span
from proofkit.habits._places import usage_of
from proofkit.habits._sound_words import SOUNDS, sound_key
from proofkit.habits._typeface import FORMS as DRESSES
from proofkit.habits._typeface import dress_of
from proofkit.habits.usage import Usage
from proofkit.words.quotations import Quotations, quotations_of

MATTER = "sounds"
FORMS = DRESSES

_KEYS = frozenset(sound_key(sound) for sound in SOUNDS)
_SENTENCE = re.compile(
    r"(?:(?<=[.!?…\"”’:\n—–] )|(?<=\n)|^)[\"'“‘]?(?P<words>[^\W\d_][^.!?…\n\"”“:—–]{0,40})"
)
_WORD = re.compile(r"[^\W\d_]+")


def usage(book: Book, analysis: Analysis) -> Usage:  # noqa: ARG001 - every matter takes both
    """Every sentence that is nothing but sounds, outside speech."""
    quotations = quotations_of(book)
    return usage_of(MATTER, (place for page in book.pages for place in _on_page(page, quotations)))


def _on_page(page: Page, quotations: Quotations) -> Iterator[tuple[str, Span]]:
    for match in _SENTENCE.finditer(page.prose):
        start, end = match.span("words")
        words = _WORD.findall(match["words"])
        if all(sound_key(word) in _KEYS for word in words) and not quotations.speaks(
            page.number, start
        ):
            yield dress_of(page, start, end), page.span(start, end)
