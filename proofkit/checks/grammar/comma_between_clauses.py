"""No comma before "and" or "but" between two whole sentences: house style, asked once for the book.

What it finds
    "The rain stopped and the children ran out", where each half could stand alone and many houses
    put a comma. One query for the whole book, at the first place, with all others beside it. Pages
    in broken lines are left alone.

Why a reader minds
    The comma is where the voice takes breath; without it two long halves run together.

Example
    The wind blew the gate open and all the hens ran out.

Better
    The wind blew the gate open, and all the hens ran out.

When to let it stand
    When the halves are short, or the book does without such commas all through.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.grammar._matches import row_for_book
from proofkit.issue import Issue
from proofkit.settings import Settings

NAME = "grammar/comma-between-clauses"
NEEDS = frozenset({Need.GRAMMAR_ENGINE})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield at most one query, for the whole book."""
    yield from row_for_book(
        book, analysis, NAME, "some houses put a comma between two whole sentences"
    )
