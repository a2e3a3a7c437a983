"""A tab inside a line.

What it finds
    A tab character between two words. A tab that indents a paragraph is left alone. All of them are
    one query.

Why a reader minds
    It looks like a space on the author's screen and like a hole in the page once it is set.

Example
    The owl<tab>blinked.

Better
    The owl blinked.

When to let it stand
    In a list or a table that is set out in columns.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings

NAME = "spacing/tab-in-line"
NEEDS = frozenset({Need.TEXT})

_TAB = re.compile(r"(?<=\S)[ \u00a0]*\t[\t \u00a0]*(?=\S)")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield one issue for all tabs inside lines."""
    spans = [page.span(*match.span()) for page in book.pages for match in _TAB.finditer(page.prose)]
    if spans:
        yield issue_at(
            book,
            spans[0],
            check=NAME,
            tier=Tier.QUERY,
            message="a tab inside the line",
            suggestions=[" "],
            confidence=0.7,
            related=spans[1:],
        )
