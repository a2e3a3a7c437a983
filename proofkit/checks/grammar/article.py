"""“A” before a vowel sound, or “an” before a consonant.

What it finds
    "a apple", "an big hug", "a hour". It goes by sound, not by letter: an hour, a unicorn. Words that
    the dictionary lacks are judged only where their first letter leaves no doubt.

Why a reader minds
    The tongue trips over it.

Example
    She ate a apple.

Better
    She ate an apple.

When to let it stand
    In the talk of a small child or of somebody who drops his aitches.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from proofkit.analysis import Analysis, Match
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.grammar._matches import issues_for
from proofkit.issue import Issue
from proofkit.settings import Settings
from proofkit.words.dictionary import dictionary
from proofkit.words.vocabulary import WORD

NAME = "grammar/article"
NEEDS = frozenset({Need.GRAMMAR_ENGINE})

_UNSURE = re.compile(r"u|h|y|eu|ew|oi|o$|[a-z]$|[A-Z]+$", re.IGNORECASE)
_WORD_FOLLOWS = re.compile(r"\s+[^\W\d_]")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue for each article that its next word contradicts, alike ones together."""
    sure = [match for match in analysis.matches if _sure(book, analysis, match)]
    yield from issues_for(book, replace(analysis, matches=tuple(sure)), NAME, _message)


def _sure(book: Book, analysis: Analysis, match: Match) -> bool:
    prose = book.page(match.page).prose
    following = WORD.search(prose, match.end)
    if following is None or not _WORD_FOLLOWS.match(prose, match.end):
        return False
    word = following.group()
    known = dictionary(analysis.english).knows(word)
    return (known and len(word) > 1) or not _UNSURE.match(word)


def _message(match: Match) -> str:
    if match.replacements[:1] and match.replacements[0].lower() == "an":
        return "“an” before a vowel sound"
    return "“a” before a consonant sound"
