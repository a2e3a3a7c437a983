"""A small word that is one too many.

What it finds
    "the a cake", "could can see", "there was no one to else to blame", "despite of". What is left
    when a sentence was changed half way. A word written twice is found by another check.

Why a reader minds
    The sentence can't be read aloud as it stands.

Example
    He gave her the a cake.

Better
    He gave her the cake.

When to let it stand
    When somebody stammers or corrects himself.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.grammar._matches import issues_for
from proofkit.issue import Issue
from proofkit.settings import Settings

NAME = "grammar/extra-word"
NEEDS = frozenset({Need.GRAMMAR_ENGINE})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue for each place where a word is one too many."""
    yield from issues_for(book, analysis, NAME, "a word too many")
