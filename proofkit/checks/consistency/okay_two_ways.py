"""OK in two ways: OK, okay, O.K., ok.

What it finds
    A book that has more than one of OK, okay, O.K. and ok.

Why a reader minds
    All are the same word, and good ones; a child asks why it looks so different today.

Example
    "OK," said Bo. "OK," said Mo. "Okay," said Flo.

Better
    "OK," said Bo. "OK," said Mo. "OK," said Flo.

When to let it stand
    On a sign or a button in the story. To keep one in all drafts, decide OK in your style sheet.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.consistency._odd_words import Row, row_of
from proofkit.habits import okay
from proofkit.issue import Issue
from proofkit.settings import Settings

NAME = "consistency/okay-two-ways"
NEEDS = frozenset({Need.TEXT})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue, on the places in the ways that the book has less often; not on OK if it is among equals."""
    row = Row(
        check=NAME,
        better=lambda span, form: okay.in_form(book, span, form),
        preferred=lambda tied: min(tied, key=okay.FORMS.index),
        confidence=0.85,
    )
    decided = settings.style.form(okay.MATTER) or okay.decided_by(settings.style.words)
    issue = row_of(book, okay.usage(book, analysis), row, decided=decided)
    if issue:
        yield issue
