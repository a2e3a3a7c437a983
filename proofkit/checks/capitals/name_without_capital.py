"""A name that has its capital all through the book, and not here.

What it finds
    A name in lower case inside a sentence (*and then bruno ran*), judged by the book itself: words that are
    no ordinary words (*zuri*), half of a name of two words (*the Mock turtle*), a character called by
    what he is (*the Mole* all through, *the mole* once), and ordinary words that are names here (*rose* for
    Rose), where only a name can stand.

Why a reader minds
    A capital is how a child tells a name from a word.

Example
    Bruno met Zuri. "Run, Bruno!" cried Zuri, and bruno ran.

Better
    Bruno met Zuri. "Run, Bruno!" cried Zuri, and Bruno ran.

When to let it stand
    When the kind is meant and not the one: a mole like the Mole.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.capitals._names_here import Slip, kinds, pairs, strangers
from proofkit.checks.check import Need
from proofkit.checks.counting import times
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings

NAME = "capitals/name-without-capital"
NEEDS = frozenset({Need.LANGUAGE_MODEL})

_LIKELY = 0.6


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue for each place; the witness that is surest speaks where several would."""
    seen: set[Span] = set()
    for slips in (pairs, strangers, kinds):
        for slip in slips(book, analysis):
            if slip.span not in seen:
                seen.add(slip.span)
                yield _issue(book, slip)


def _issue(book: Book, slip: Slip) -> Issue:
    return issue_at(
        book,
        slip.span,
        check=NAME,
        tier=Tier.ERROR if slip.sure >= _LIKELY else Tier.QUERY,
        message=f"elsewhere {slip.elsewhere} ({times(slip.times)})",
        suggestions=(slip.reading,),
        confidence=slip.sure,
    )
