"""Ordinals in words and in figures: the third frog, the 3rd frog.

What it finds
    A book that writes "third" and also "4th". Dates, streets and centuries are left alone.

Why a reader minds
    Nobody says "four-th"; a child who spells out the figure stumbles. And one book has one way.

Example
    The first frog jumped, the second frog hopped, and the 3rd frog fell asleep.

Better
    The first frog jumped, the second frog hopped, and the third frog fell asleep.

When to let it stand
    On a sign, a medal or a ticket in the story: "1st Prize".
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.consistency._odd_words import Row, row_of
from proofkit.habits import ordinals
from proofkit.issue import Issue
from proofkit.settings import Settings

NAME = "consistency/ordinal-two-ways"
NEEDS = frozenset({Need.TEXT})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue, on the ordinals in the way that the book has less often; figures if they are equal."""
    row = Row(
        check=NAME,
        better=lambda span, form: ordinals.in_form(book.quote(span), form),
        preferred=lambda _: ordinals.WORDS,
        shown=lambda form: f"ordinals {form}",
        confidence=0.75,
    )
    issue = row_of(
        book,
        ordinals.usage(book, analysis),
        row,
        decided=settings.style.form(ordinals.MATTER),
    )
    if issue:
        yield issue
