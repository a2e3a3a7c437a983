"""A new speaker in the same paragraph, where the book gives each a new one.

What it finds
    Two speakers, both named, who speak in one paragraph of a book in which each new speaker elsewhere
    begins a new paragraph. All places are one row.

Why a reader minds
    The line that begins anew tells that somebody else speaks. Without it the one who reads aloud keeps
    the voice of the first.

Example
    "Who's there?" asked Mole. "Only me," said Hare.

Better
    "Who's there?" asked Mole.
    "Only me," said Hare.

When to let it stand
    Where quick words that belong together are run on so that they read fast.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.consistency._odd_marks import norm_of
from proofkit.habits import speech_layout
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings

NAME = "consistency/speaker-two-ways"
NEEDS = frozenset({Need.TEXT})

_FEWEST = 4  # speakers who begin a paragraph
_MOSTLY = 4  # times as many


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """At most one issue. A paragraph too many is no fault where speech is mostly run on."""
    usage = speech_layout.usage(book, analysis)
    norm = norm_of(usage, settings, forms=speech_layout.FORMS)
    odd = usage.places.get("run on", ())
    if norm is None or norm.form != "new paragraph" or not odd:
        return
    if not norm.decided and norm.times < max(_FEWEST, _MOSTLY * len(odd)):
        return
    usual = (
        "your style sheet gives each one a paragraph"
        if norm.decided
        else f"elsewhere each has a new paragraph ({norm.elsewhere})"
    )
    yield issue_at(
        book,
        odd[0],
        check=NAME,
        tier=Tier.QUERY,
        message=f"a new speaker in the same paragraph; {usual}",
        confidence=0.55,
        related=odd[1:],
    )
