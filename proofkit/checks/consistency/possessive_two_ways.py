"""James's in one place, James' in another.

What it finds
    A name that ends in s and owns something, now with an s after its apostrophe, now without. Families
    (the Joneses' cat) and names of antiquity (Moses' basket) are left alone.

Why a reader minds
    Whoever reads aloud doesn't know whether to say the s.

Example
    That was James's hat. This was James's coat. But whose were James' boots?

Better
    That was James's hat. This was James's coat. But whose were James's boots?

When to let it stand
    When one of them is a plural. To keep one form in all drafts, decide it in your style sheet.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.consistency._odd_words import Row, row_of
from proofkit.habits import possessive_of_s
from proofkit.issue import Issue
from proofkit.settings import Settings

NAME = "consistency/possessive-two-ways"
NEEDS = frozenset({Need.TEXT})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue for the book, on the form that it has less often; of two as frequent, on James'."""
    row = Row(
        check=NAME,
        better=lambda span, form: possessive_of_s.in_form(book.quote(span), form),
        preferred=lambda tied: min(tied, key=possessive_of_s.FORMS.index),
        confidence=0.8,
    )
    decided = settings.style.form(possessive_of_s.MATTER)
    issue = row_of(book, possessive_of_s.usage(book, analysis), row, decided=decided)
    if issue:
        yield issue
