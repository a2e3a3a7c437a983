"""A verb in a form that can't stand where it stands.

What it finds
    "had went", "didn't saw", "wanted to caught", "could of", "was suppose to", "they use to". Inside
    speech only "could of" and "use to", which nobody can hear, are asked about.

Why a reader minds
    A child learns how a verb changes from the sentences it hears again and again.

Example
    She had went to bed.

Better
    She had gone to bed.

When to let it stand
    When the one who tells the story talks so on purpose.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.grammar._matches import issues_for
from proofkit.issue import Issue
from proofkit.settings import Settings

NAME = "grammar/verb-form"
NEEDS = frozenset({Need.GRAMMAR_ENGINE})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue for each verb in a form that can't stand there."""
    yield from issues_for(book, analysis, NAME, "not the form of the verb that belongs here")
