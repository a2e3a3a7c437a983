"""The comma before "and" in a list, here but not there.

What it finds
    A list of three or more with a comma before *and* or *or* in a book whose lists mostly have none, or
    the other way about. It speaks only where the book has at least three lists and mostly one way. All
    places are one row.

Why a reader minds
    Hardly anybody minds; a copy-editor does, and will ask which of the two you want.

Example
    A hat, a scarf and a stick. Buns, jam and tea. A cup, a plate, and a spoon.

Better
    A hat, a scarf and a stick. Buns, jam and tea. A cup, a plate and a spoon.

When to let it stand
    Where the comma keeps two things apart: *tea, toast and jam, and an egg*.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.checks.consistency._odd_marks import Habit, norm_of, odd_ones
from proofkit.habits import serial_comma
from proofkit.issue import Issue
from proofkit.settings import Settings

NAME = "consistency/serial-comma-two-ways"
NEEDS = frozenset({Need.LANGUAGE_MODEL})

_LISTS = 3
_MOSTLY = 2  # times as often


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """At most one issue, on the first list that is set the other way."""
    usage = serial_comma.usage(book, analysis)
    norm = norm_of(usage, settings, forms=serial_comma.FORMS)
    if norm is None:
        return
    odd = len(usage.against(norm.form))
    if norm.decided or (norm.times + odd >= _LISTS and norm.times >= _MOSTLY * odd):
        yield from odd_ones(book, usage, settings, _HABIT)


def _reading(book: Book, span: Span, form: str) -> tuple[Span, str]:
    joint = book.quote(span).lstrip(", ")
    return span, f", {joint}" if form == "always" else f" {joint}"


# New Hart's Rules: use it throughout or leave it out throughout, but where it prevents a misreading.
_HABIT = Habit(
    check=NAME,
    forms=serial_comma.FORMS,
    says={
        "always": "a comma before the last of a list",
        "never": "no comma before the last of a list",
    },
    reading=_reading,
    mechanical=False,
    confidence=0.55,
)
