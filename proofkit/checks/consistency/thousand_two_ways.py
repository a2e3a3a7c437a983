"""Thousands with and without a comma: 1,000 and 1000.

What it finds
    Numbers of four figures and more, some with their comma and some without. Years, pages and codes
    don't count.

Why a reader minds
    A long number without its comma has to be counted out; with it in one place only, both look wrong.

Example
    There were 1,000 ants and 2,000 bees, and 3000 gnats.

Better
    There were 1,000 ants and 2,000 bees, and 3,000 gnats.

When to let it stand
    When the number is a name or a code: Robot 4000.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.consistency._odd_words import Row, row_of
from proofkit.habits import thousands
from proofkit.issue import Issue
from proofkit.settings import Settings

NAME = "consistency/thousand-two-ways"
NEEDS = frozenset({Need.TEXT})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue, on the numbers in the way that the book has less often; those without if equal."""
    row = Row(
        check=NAME,
        better=lambda span, form: thousands.in_form(book.quote(span), form),
        preferred=lambda _: thousands.COMMA,
        shown=lambda form: f"thousands {form}",
        confidence=0.8,
    )
    issue = row_of(
        book,
        thousands.usage(book, analysis),
        row,
        decided=settings.style.form(thousands.MATTER),
    )
    if issue:
        yield issue
