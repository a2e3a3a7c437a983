"""An apostrophe that is missing, or one too many, where the word exists both ways.

What it finds
    "lets go", "she cant", "three apple's". Words that need an apostrophe to be words at all (dont,
    didnt) are found by marks/missing-apostrophe.

Why a reader minds
    It is the best-known mistake in English, and parents enjoy finding it.

Example
    Lets go home.

Better
    Let's go home.

When to let it stand
    In a note or a sign that a child in the story wrote.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.grammar._matches import issues_for
from proofkit.issue import Issue
from proofkit.settings import Settings

NAME = "grammar/apostrophe"
NEEDS = frozenset({Need.GRAMMAR_ENGINE})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue for each apostrophe that is missing or too many."""
    yield from issues_for(book, analysis, NAME, "an apostrophe is missing, or one too many")
