"""A pronoun in the form for the other side of the verb: he for him, me for I.

What it finds
    "looked at he", "him and me went", "between you and I", "them boys are loud", outside speech.

Why a reader minds
    Grown-ups were told about it at school, and notice.

Example
    The wolf looked at he.

Better
    The wolf looked at him.

When to let it stand
    When a child or a character tells the story in a voice of his own: "Me and Ben" is how they talk.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from proofkit.analysis import Analysis, Match
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.grammar._matches import issues_for
from proofkit.issue import Issue
from proofkit.settings import Settings

NAME = "grammar/pronoun"
NEEDS = frozenset({Need.GRAMMAR_ENGINE})

_AFTER_PREPOSITION = {"i": "me", "he": "him", "she": "her", "we": "us", "they": "them"}


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue for each pronoun in the wrong form, alike ones together."""
    matches = tuple(
        _bettered(book, match) for match in analysis.matches if not _reflexive(book, match)
    )
    told = replace(analysis, matches=matches)
    yield from issues_for(book, told, NAME, "another form of the pronoun belongs here")


def _bettered(book: Book, match: Match) -> Match:
    """The match, with the same person's other form as its reading where a preposition comes first."""
    before, _, last = _quote(book, match).rpartition(" ")
    other = _AFTER_PREPOSITION.get(last.lower())
    if match.rule != "OBJECTIVE_CASE" or not before or other is None:
        return match
    return replace(match, replacements=(f"{before} {other}",))


def _reflexive(book: Book, match: Match) -> bool:
    """Whether it is about "myself" and the like, which stories use for weight: "Granny and myself"."""
    return _quote(book, match).lower().endswith(("self", "selves"))


def _quote(book: Book, match: Match) -> str:
    return book.page(match.page).text[match.start : match.end]
