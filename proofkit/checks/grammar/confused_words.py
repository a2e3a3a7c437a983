"""A word that is taken for another: to for too, there for their, its for it's.

What it finds
    Pairs that sound or look alike, where the words around show that the other one is meant: "to
    tired", "there hats", "it's paw", "taller then", "they where". Inside speech too, for nobody can
    hear the difference.

Why a reader minds
    It is a word, so no dictionary helps; and whoever reads aloud says what is written.

Example
    The bear was to tired to dance.

Better
    The bear was too tired to dance.

When to let it stand
    In a letter or sign written by a child in the story, and in puns.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis, Match
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.grammar._matches import issues_for
from proofkit.issue import Issue
from proofkit.settings import Settings

NAME = "grammar/confused-words"
NEEDS = frozenset({Need.GRAMMAR_ENGINE})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue for each word that seems to be taken for another, alike ones together."""
    yield from issues_for(book, analysis, NAME, _message)


def _message(match: Match) -> str:
    if match.replacements and " " not in match.replacements[0].strip():
        return f"“{match.replacements[0]}” seems to be meant"
    return "another word seems to be meant"
