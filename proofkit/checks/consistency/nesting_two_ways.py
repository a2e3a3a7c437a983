"""Marks of the same kind inside marks.

What it finds
    Words in marks inside a speech, with the same marks as the speech itself. Each place is listed in
    one row.

Why a reader minds
    At the second mark the speech seems to end, and the reader stops in the middle.

Example
    “She said “No” to me,” said Pip.

Better
    “She said ‘No’ to me,” said Pip.

When to let it stand
    Where the inner marks close one speech and open another, and only a space is missing.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.habits import nesting
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.quotations import quotations_of

NAME = "consistency/nesting-two-ways"
NEEDS = frozenset({Need.TEXT})

# The other kind of each mark, curly for curly.
_OTHER = {'"': "'", "'": '"', "“": "‘", "”": "’", "‘": "“", "’": "”"}


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """At most one issue: manuals agree that the inner marks are of the other kind."""
    usage = nesting.usage(book, analysis)
    same = usage.places.get(nesting.SAME, ())
    if not same:
        return
    first, *others = same
    own = book.quote(first)
    inside = "single" if quotations_of(book).double else "double"
    times = usage.count(nesting.FORMS[inside == "double"])
    elsewhere = f"; elsewhere {inside} ones ({times} times)" if times > 1 else ""
    yield issue_at(
        book,
        first,
        check=NAME,
        tier=Tier.QUERY,
        message=f"the same marks inside marks{elsewhere or f': {inside} ones are usual there'}",
        suggestions=(_OTHER.get(own[0], own[0]) + own[1:-1] + _OTHER.get(own[-1], own[-1]),),
        confidence=0.7,
        related=others,
    )
