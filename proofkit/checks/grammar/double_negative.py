"""Two negatives where one is meant.

What it finds
    "didn't see nothing", "couldn't hardly walk", outside speech.

Why a reader minds
    In standard English the two undo each other, and a grown-up reading aloud will hear it.

Example
    The owl didn't see nothing.

Better
    The owl didn't see anything.

When to let it stand
    When the one who tells the story talks so: many good ones do.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.grammar._matches import issues_for
from proofkit.issue import Issue
from proofkit.settings import Settings

NAME = "grammar/double-negative"
NEEDS = frozenset({Need.GRAMMAR_ENGINE})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one query for each sentence of the story that says no twice."""
    yield from issues_for(book, analysis, NAME, "two words for no, where one is meant")
