"""A place where a small word seems to have been left out.

What it finds
    "a lot food", "he wanted go home", "on of the frogs". A word that was dropped while typing, or
    lost in a revision.

Why a reader minds
    The reader's voice stops where the word should be.

Example
    There was a lot food.

Better
    There was a lot of food.

When to let it stand
    In a character's own way of talking, and in lines cut short to keep a beat.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.grammar._matches import issues_for
from proofkit.issue import Issue
from proofkit.settings import Settings

NAME = "grammar/missing-word"
NEEDS = frozenset({Need.GRAMMAR_ENGINE})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue for each place where a word seems to have been left out."""
    yield from issues_for(book, analysis, NAME, "a word seems to be missing")
