"""Dates in two ways: 3 May, May 3rd.

What it finds
    A day and a month that the book writes in more than one way: 3 May, 3rd May, the 3rd of May, May 3,
    May 3rd.

Why a reader minds
    A child follows a diary or a calendar by the look of its dates.

Example
    On 3 May the egg was laid. On 9 May it cracked. On May 12 out came the chick.

Better
    On 3 May the egg was laid. On 9 May it cracked. On 12 May out came the chick.

When to let it stand
    In a letter or a poster by someone who writes dates in a way of their own.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.consistency._odd_words import Row, row_of
from proofkit.habits import dates
from proofkit.issue import Issue
from proofkit.settings import English, Settings

NAME = "consistency/date-two-ways"
NEEDS = frozenset({Need.TEXT})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue, on the dates in the ways that the book has less often."""
    month_first = analysis.english is English.AMERICAN
    row = Row(
        check=NAME,
        better=lambda span, form: dates.in_form(book.quote(span), form),
        preferred=lambda tied: min(tied, key=lambda f: (f.startswith("May") != month_first, f)),
        shown=lambda form: f"dates as {form}",
        confidence=0.75,
    )
    issue = row_of(
        book, dates.usage(book, analysis), row, decided=settings.style.form(dates.MATTER)
    )
    if issue:
        yield issue
