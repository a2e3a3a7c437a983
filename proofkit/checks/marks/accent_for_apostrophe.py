"""An accent typed for an apostrophe.

What it finds
    A lone acute or grave accent where an apostrophe belongs: *Let´s*, *it`s*. All places of one
    word are one issue.

Why a reader minds
    It sits too high and leaves a hole in the word; search and spelling tools don't know the word.

Example
    Let´s go home.

Better
    Let's go home.

When to let it stand
    Never. An accent that sits on its letter (*café*) is left alone.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterable

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings

NAME = "marks/accent-for-apostrophe"
NEEDS = frozenset({Need.TEXT})

_PLACE = re.compile(r"[^\W\d_]+[´`ˋˊ][^\W\d_]+|[^\W\d_]*(?:s|in|o)[´`ˋˊ](?=\s)")
_ACCENT = re.compile("[´`ˋˊ]")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield one issue for each word that has an accent for its apostrophe."""
    apostrophe = "’" if any("’" in page.text for page in book.pages) else "'"
    places: dict[str, list[Span]] = defaultdict(list)
    for page in book.pages:
        for match in _PLACE.finditer(page.prose):
            places[match.group()].append(page.span(*match.span()))
    for word, spans in places.items():
        yield issue_at(
            book,
            spans[0],
            check=NAME,
            tier=Tier.ERROR,
            message="an accent where an apostrophe belongs",
            suggestions=[_ACCENT.sub(apostrophe, word)],
            confidence=0.95,
            related=spans[1:],
        )
