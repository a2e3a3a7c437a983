"""A curly apostrophe that is turned the wrong way.

What it finds
    An opening single mark where an apostrophe stands for letters left out at the start of a word:
    *‘twas*, *rock ‘n’ roll*, *‘em*. Word processors turn it so by themselves.

Why a reader minds
    It looks like speech that never closes.

Example
    We caught ‘em all.

Better
    We caught ’em all.

When to let it stand
    Where a quotation really opens there.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.quotations import quotations_of

NAME = "marks/turned-apostrophe"
NEEDS = frozenset({Need.TEXT})

_PLACE = re.compile(
    r"(?<!\w)‘(?:(?:twas|tis|twere|twill|em|til|cause|bout|round)\b|n[’']|\d0s\b|tis\b)", re.I
)


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield each apostrophe that is turned the wrong way."""
    quoting = {
        (q.opening.span.page, q.opening.span.start)
        for q in quotations_of(book).singles
        if q.opening is not None and q.whole
    }
    for page in book.pages:
        for match in _PLACE.finditer(page.prose):
            if (page.number, match.start()) in quoting:
                continue
            yield issue_at(
                book,
                page.span(*match.span()),
                check=NAME,
                tier=Tier.ERROR,
                message="an apostrophe turned the wrong way",
                suggestions=["’" + match.group()[1:]],
                confidence=0.85,
            )
