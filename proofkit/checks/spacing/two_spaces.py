"""Two spaces, or more, where one will do.

What it finds
    Runs of spaces between words or after a full stop. All of them are one query, since they are one
    search-and-replace.

Why a reader minds
    In print they make white holes in the line. Two spaces after a full stop are a habit of
    typewriters; printers use one.

Example
    The hen sat down.  Then she slept.

Better
    The hen sat down. Then she slept.

When to let it stand
    Where the gap is part of the picture, as in words that drift apart on purpose.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.spacing._gaps import undisturbed
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings

NAME = "spacing/two-spaces"
NEEDS = frozenset({Need.TEXT})

_RUN = re.compile(r"(?<=\S)(?<!\])[ \u00a0]{2,}(?=[^\s\[])")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield one issue for all runs of spaces in the book."""
    spans = [
        page.span(*match.span())
        for page in book.pages
        for match in _RUN.finditer(page.prose)
        if undisturbed(page, match.start() - 1, match.end() + 1)
    ]
    if not spans:
        return
    times = f" ({len(spans)} places)" if len(spans) > 1 else ""
    yield issue_at(
        book,
        spans[0],
        check=NAME,
        tier=Tier.QUERY,
        message=f"more than one space{times}",
        suggestions=[" "],
        confidence=0.8,
        related=spans[1:],
    )
