"""A dash that leans to one side.

What it finds
    A dash or hyphen with a space before it and none after it, or the other way about, between two
    words. A hyphen that waits for its word (*four- and five-year-olds*) and speech that breaks off
    are left alone.

Why a reader minds
    It reads as half a hyphen: nobody knows whether the words belong together.

Example
    The tent was big –bigger than a house.

Better
    The tent was big – bigger than a house.

When to let it stand
    Where the dash shows that a word is cut off.
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

NAME = "spacing/dash-to-one-side"
NEEDS = frozenset({Need.TEXT})

_PLACE = re.compile(
    r"(?P<left>[^\W\d_]{2,}) (?P<before>[–-])(?P<right>[^\W\d_]{2,})"
    r"|(?P<left2>[^\W\d_]{2,})(?P<after>[–-]) (?!(?:and|or|nor|to|but)\b)(?P<right2>[^\W\d_]{2,})"
)


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield each dash with a space on one side only."""
    for page in book.pages:
        for match in _PLACE.finditer(page.prose):
            if not undisturbed(page, *match.span()):
                continue
            left, right = match["left"] or match["left2"], match["right"] or match["right2"]
            dash = match["before"] or match["after"]
            yield issue_at(
                book,
                page.span(*match.span()),
                check=NAME,
                tier=Tier.QUERY,
                message="a dash with a space on one side only",
                suggestions=_readings(
                    left, dash, right, analysis, leans_left=match["after"] is not None
                ),
                confidence=0.65,
            )


def _readings(
    left: str, dash: str, right: str, analysis: Analysis, *, leans_left: bool
) -> list[str]:
    open_dash, closed = f"{left} – {right}", f"{left}-{right}"
    if dash == "–":
        return [open_dash]
    return (
        [closed, open_dash]
        if leans_left or analysis.vocabulary.count(closed)
        else [open_dash, closed]
    )
