"""Speech broken off by dashes of more than one kind.

What it finds
    A dash after which a speech or a line stops short, of another kind than the book has in such places
    elsewhere. All places are one row. The dash between words is counted apart: a book may have spaced
    en rules there and em rules here.

Why a reader minds
    The sign for "cut short" should be one sign, so that the one who reads aloud trusts it.

Example
    "But I—" said Tock. "Not a—" said Pell. "I only -" said Tock.

Better
    "But I—" said Tock. "Not a—" said Pell. "I only—" said Tock.

When to let it stand
    A hyphen for a word cut in the middle, where the dash elsewhere cuts a sentence.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.consistency._dash_reading import SAYS, after_word
from proofkit.checks.consistency._odd_marks import Habit, odd_ones
from proofkit.habits import broken_off
from proofkit.issue import Issue
from proofkit.settings import Settings

NAME = "consistency/broken-off-two-ways"
NEEDS = frozenset({Need.TEXT})

# New Hart's Rules: an em rule closed up to the last word, or the dash of the publisher's house style.
_HABIT = Habit(
    check=NAME,
    forms=broken_off.FORMS,
    says=SAYS,
    reading=after_word,
    mechanical=False,
    confidence=0.7,
)


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """At most one issue, on the first dash of another kind."""
    yield from odd_ones(book, broken_off.usage(book, analysis), settings, _HABIT)
