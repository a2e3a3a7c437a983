"""Words that don't go together the way they are put.

What it finds
    A mixed bag of rarer slips, each asked about and none insisted on: "all the sudden", "one years
    old", "the same like". Nothing inside speech.

Why a reader minds
    The meaning comes through, but the sentence sounds like no one.

Example
    All the sudden it began to rain.

Better
    All of a sudden it began to rain.

When to let it stand
    When it is how this storyteller talks, or an old turn of phrase used on purpose.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.grammar._matches import issues_for
from proofkit.issue import Issue
from proofkit.settings import Settings

NAME = "grammar/phrase"
NEEDS = frozenset({Need.GRAMMAR_ENGINE})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one query for each turn of phrase that English doesn't have."""
    yield from issues_for(book, analysis, NAME, "these words don't go together")
