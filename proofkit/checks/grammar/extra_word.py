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

import re
from collections.abc import Iterator
from dataclasses import replace

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.grammar._matches import issues_for
from proofkit.issue import Issue
from proofkit.settings import Settings

NAME = "grammar/extra-word"
NEEDS = frozenset({Need.GRAMMAR_ENGINE})

# "No one to else to blame": here "to" was never a "too".
_CUT_OFF = re.compile(r"to else to", re.IGNORECASE)


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue for each place where a word is one too many; the first reading has one word less."""
    for issue in issues_for(book, analysis, NAME, "a word too many"):
        words = issue.quote.split()
        if _CUT_OFF.fullmatch(issue.quote):
            yield replace(issue, suggestions=(" ".join(words[1:]),))
            continue
        fewer = [s for s in issue.suggestions if len(s.split()) < len(words)]
        readings = dict.fromkeys(s for s in (*fewer, *issue.suggestions) if "," not in s)
        twice = len(words) == 2 and words[0].lower() == words[1].lower()
        if twice:
            readings = {words[0]: None, **readings}
        yield replace(issue, suggestions=tuple(readings) or issue.suggestions)
