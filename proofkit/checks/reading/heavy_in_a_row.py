"""Three heavy spreads in a row, none of them too heavy alone.

What it finds
    Three spreads or more in a row (or pages, where spreads aren't known), each with more words than
    most books of the age band have on one, or with twice the book's own usual number. Where one of them
    is heavy beyond all measure, that one is asked about instead; where the whole book is about as heavy,
    nothing is asked.

Why a reader minds
    After a full spread a listener wants a light one: a picture to look at, a line to laugh about.
    Three full ones in a row is where children slide off the lap.

Example
    Spreads of 30, 35, 72, 70, 75, 28 and 31 words.

Better
    The middle one of the three cut to a sentence, and what it told shown in the picture.

When to let it stand
    The heart of a story may run on: a chase, a quarrel, a tale within the tale. Read it to a child and see.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.reading._claims import Matter, asked, claims, usual_words
from proofkit.issue import Issue
from proofkit.reading.bands import band_named
from proofkit.settings import Settings

NAME = "reading/heavy-in-a-row"
NEEDS = frozenset({Need.TEXT})
_CONFIDENCE = 0.4


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue, at the first words of the first of them."""
    found = claims(book, band_named(settings.age_band))
    heavy = sorted(
        (claim for claim in found if claim.matter is Matter.IN_A_ROW), key=lambda claim: claim.span
    )
    if heavy:
        first = heavy[0]
        message = (
            f"{first.amount} heavy {first.step.kind}s in a row, where the book’s others have about "
            f"{usual_words(book):.0f} words: can one be lighter?"
        )
        yield asked(book, heavy, check=NAME, message=message, confidence=_CONFIDENCE)
