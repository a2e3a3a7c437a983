"""Dashes of more than one kind.

What it finds
    A dash between words that is not of the kind that the book has elsewhere: a hyphen with spaces, an
    en rule, an em rule, two hyphens, with or without spaces. All places are one row. Hyphens inside
    words, numbers from one to another and stutters are left alone.

Why a reader minds
    Two lengths of dash on one page look like two different signs.

Example
    The box – a red one – was empty. The lid - it was heavy - fell shut. The key – where was it?

Better
    The box – a red one – was empty. The lid – it was heavy – fell shut. The key – where was it?

When to let it stand
    In a letter or on a sign that is shown as somebody wrote it.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.consistency._dash_reading import SAYS, between_words
from proofkit.checks.consistency._odd_marks import Habit, odd_ones
from proofkit.habits import dash
from proofkit.issue import Issue
from proofkit.settings import Settings

NAME = "consistency/dash-two-ways"
NEEDS = frozenset({Need.TEXT})

# New Hart's Rules: a spaced en rule (British) or a closed-up em rule (Oxford, American), one of them
# throughout.
_HABIT = Habit(
    check=NAME,
    forms=dash.FORMS,
    says=SAYS,
    reading=between_words,
    mechanical=True,
    confidence=0.85,
)


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """At most one issue, on the first dash of another kind."""
    yield from odd_ones(book, dash.usage(book, analysis), settings, _HABIT)
