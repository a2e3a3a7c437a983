"""Whether the book has its hours in words or in figures: seven o'clock, 7 o'clock.

The Chicago manual (9.37) has a number before o'clock in words (from memory).
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.habits._number_words import cardinal, value
from proofkit.habits._places import usage_of
from proofkit.habits.usage import Usage

MATTER = "hour-before-o-clock"
WORDS, FIGURES = FORMS = ("in words", "in figures")

_HOURS = "|".join(cardinal(hour) for hour in range(12, 0, -1))
_OCLOCK = re.compile(rf"\b(?:(\d{{1,2}})|{_HOURS})(?=[ \u00a0\n-]?o[’'‘]clock\b)", re.IGNORECASE)


def usage(book: Book, analysis: Analysis) -> Usage:  # noqa: ARG001 - every matter takes both
    """Where the book has the hour before "o'clock" in words, and where in figures."""
    return usage_of(MATTER, _places(book))


def in_form(written: str, form: str) -> str:
    """The hour in words or in figures, its capital kept."""
    hour = int(written) if written.isdigit() else value(written) or 0
    if not 1 <= hour <= 12:
        return written
    return str(hour) if form == FIGURES else cardinal(hour)


def _places(book: Book) -> Iterator[tuple[str, Span]]:
    for page in book.pages:
        for match in _OCLOCK.finditer(page.prose):
            yield (FIGURES if match[1] else WORDS), page.span(*match.span())
