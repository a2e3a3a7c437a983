"""No comma after the words that open a sentence: a matter of house style, asked once for the book.

What it finds
    "At last they reached the hill", "Finally the bear slept", where many houses put a comma. One
    query for the whole book, at the first place, with all others beside it. Pages in broken lines
    are left alone.

Why a reader minds
    Few do; but a book that has the comma here and lacks it there looks unread.

Example
    In the end the snail won.

Better
    In the end, the snail won.

When to let it stand
    Always, if the book leaves such commas out all through.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.grammar._matches import row_for_book
from proofkit.issue import Issue
from proofkit.settings import Settings

NAME = "grammar/comma-after-opening"
NEEDS = frozenset({Need.GRAMMAR_ENGINE})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield at most one query, for the whole book."""
    yield from row_for_book(book, analysis, NAME, "some houses put a comma after opening words")
