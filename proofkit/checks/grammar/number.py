"""One or many: a noun and the word before it that disagree.

What it finds
    "many friend", "this shoes", "every days", "one of her friend", "a few minute", "the mans".

Why a reader minds
    The picture shows how many there are, and a child who counts will say so.

Example
    He had many friend.

Better
    He had many friends.

When to let it stand
    In a small child's talk, and with words that a place or a trade counts in its own way.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.grammar._matches import issues_for
from proofkit.issue import Issue
from proofkit.settings import Settings

NAME = "grammar/number"
NEEDS = frozenset({Need.GRAMMAR_ENGINE})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue for each noun whose number its neighbours contradict."""
    yield from issues_for(book, analysis, NAME, "one, or more than one? These words disagree")
