"""The ellipsis, with a space before it here and without one there.

What it finds
    An ellipsis after a word with a space before it in a book that mostly has none, or the other way
    about; then, in the same manner, the space after an ellipsis between two words. Each is one row.
    A sound that comes again and again (drip…drip) is left alone.

Why a reader minds
    The gap is part of the pause: a wide one here and a narrow one there reads as if it meant something.

Example
    She looked… and looked… and then she saw it. It was … the goose.

Better
    She looked… and looked… and then she saw it. It was… the goose.

When to let it stand
    Where the points stand for words left out rather than for a pause.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.checks.consistency._odd_marks import Habit, odd_ones
from proofkit.habits import space_after_ellipsis, space_before_ellipsis
from proofkit.issue import Issue
from proofkit.settings import Settings

NAME = "consistency/ellipsis-spaced-two-ways"
NEEDS = frozenset({Need.TEXT})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """At most one issue for the space before, and one for the space after."""
    yield from odd_ones(book, space_before_ellipsis.usage(book, analysis), settings, _BEFORE)
    yield from odd_ones(book, space_after_ellipsis.usage(book, analysis), settings, _AFTER)


def _before(book: Book, span: Span, form: str) -> tuple[Span, str]:
    points = book.quote(span).strip()
    return span, f" {points}" if form == "a space" else points


def _after(book: Book, span: Span, form: str) -> tuple[Span, str]:
    points = book.quote(span).strip()
    return span, f"{points} " if form == "a space" else points


# New Hart's Rules: an ellipsis has a space on either side, but for the house that closes it up.
_BEFORE = Habit(
    check=NAME,
    forms=space_before_ellipsis.FORMS,
    says={"a space": "a space before the ellipsis", "no space": "no space before the ellipsis"},
    reading=_before,
    mechanical=False,
    confidence=0.7,
)
_AFTER = Habit(
    check=NAME,
    forms=space_after_ellipsis.FORMS,
    says={"a space": "a space after the ellipsis", "no space": "no space after the ellipsis"},
    reading=_after,
    mechanical=False,
    confidence=0.6,
)
