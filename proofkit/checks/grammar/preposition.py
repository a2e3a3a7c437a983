"""A small word (of, to, with, at …) where English has another.

What it finds
    "afraid from the dark", "married with a princess", "good in singing", "in Monday".

Why a reader minds
    Each of these goes with one small word only, and the ear waits for it.

Example
    The mouse was afraid from the cat.

Better
    The mouse was afraid of the cat.

When to let it stand
    When the Englishes differ, or the book is told in the English of its own place.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.grammar._matches import issues_for
from proofkit.issue import Issue
from proofkit.settings import Settings

NAME = "grammar/preposition"
NEEDS = frozenset({Need.GRAMMAR_ENGINE})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue for each small word where English has another."""
    yield from issues_for(book, analysis, NAME, "another small word is usual here")
