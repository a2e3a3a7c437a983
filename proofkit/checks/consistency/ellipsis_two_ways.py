"""The ellipsis, typed in two ways.

What it finds
    Three points (...) in a book that otherwise has the one character (…), or points with spaces
    between them; or the other way about. All places are one row.

Why a reader minds
    The three shapes have different widths, and side by side one looks like a slip.

Example
    Goose waited… and waited… and waited... Then the door opened.

Better
    Goose waited… and waited… and waited… Then the door opened.

When to let it stand
    Never on purpose: one search-and-replace makes them alike.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.checks.consistency._odd_marks import Habit, odd_ones
from proofkit.habits import ellipsis
from proofkit.issue import Issue
from proofkit.settings import Settings

NAME = "consistency/ellipsis-two-ways"
NEEDS = frozenset({Need.TEXT})

_WRITTEN = {"one character": "…", "three points": "...", "spaced points": ". . ."}


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """At most one issue, on the first ellipsis in another form."""
    yield from odd_ones(book, ellipsis.usage(book, analysis), settings, _HABIT)


def _reading(book: Book, span: Span, form: str) -> tuple[Span, str]:
    """The ellipsis in the form; a full stop that stands with it stays."""
    stop = "." if len(book.quote(span).replace(" ", "")) == 4 else ""
    written = _WRITTEN[form]
    return span, f"{written} {stop}".rstrip() if form == "spaced points" else written + stop


# New Hart's Rules: three points or the one character; Chicago: spaced points. One of them throughout.
_HABIT = Habit(
    check=NAME,
    forms=ellipsis.FORMS,
    says={
        "one character": "an ellipsis in one character",
        "three points": "three points",
        "spaced points": "spaced points",
    },
    reading=_reading,
    mechanical=True,
    confidence=0.9,
)
