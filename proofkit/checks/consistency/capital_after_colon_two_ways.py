"""A capital after one colon and a small letter after another.

What it finds
    A word with a capital after a colon where the book otherwise goes on in small letters, or the other
    way about. Whole sentences and mere phrases are compared apart. Speech, signs, letters and names are
    left alone. All places are one row.

Why a reader minds
    After a capital the voice starts afresh; after a small letter it runs on.

Example
    He had one wish: to fly. She had another: to swim. I have a third: To sleep.

Better
    He had one wish: to fly. She had another: to swim. I have a third: to sleep.

When to let it stand
    Where several sentences follow the colon, or words that somebody said or wrote.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.checks.consistency._odd_marks import Habit, odd_ones
from proofkit.habits import capital_after_colon
from proofkit.issue import Issue
from proofkit.settings import Settings

NAME = "consistency/capital-after-colon-two-ways"
NEEDS = frozenset({Need.LANGUAGE_MODEL})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """At most one issue: about sentences, or else about phrases."""
    for kind in (capital_after_colon.after_clauses, capital_after_colon.after_phrases):
        found = list(odd_ones(book, kind(book, analysis), settings, _HABIT))
        if found:
            yield found[0]
            return


def _reading(book: Book, span: Span, form: str) -> tuple[Span, str]:
    letter = book.quote(span)
    return span, letter.upper() if form == "capital" else letter.lower()


# New Hart's Rules: no capital after a colon in British style; Chicago: one where two sentences follow.
_HABIT = Habit(
    check=NAME,
    forms=capital_after_colon.FORMS,
    says={
        "capital": "a capital after the colon",
        "lower case": "a small letter after the colon",
    },
    reading=_reading,
    mechanical=False,
    confidence=0.65,
)
