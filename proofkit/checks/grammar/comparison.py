"""A comparison made twice over.

What it finds
    "more taller", "the most tallest", "less smaller". "More proud" is as good as "prouder".

Why a reader minds
    Small children say it so while they learn, and the book is one of those they learn from.

Example
    The giraffe was more taller than the tree.

Better
    The giraffe was taller than the tree.

When to let it stand
    For fun: a boast that grows and grows may well be the bestest and the most biggest.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.grammar._matches import issues_for
from proofkit.issue import Issue
from proofkit.settings import Settings

NAME = "grammar/comparison"
NEEDS = frozenset({Need.GRAMMAR_ENGINE})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue for each comparison that is made the wrong way."""
    yield from issues_for(book, analysis, NAME, "comparing needs one sign, not two")
