"""A spread with far more words than the others, or than its readers can sit through.

What it finds
    A spread (or a page, where spreads aren't known) with more than twice the words that books of its
    age band allow on one, or with more than they allow and at least three times the book's own usual
    number. All such spreads of a book are one issue, at the heaviest.

Why a reader minds
    The pages turn at the pace of the words. On a heavy spread the listener has seen all there is to
    see long before the reader is done, and the type crowds the picture.

Example
    Twelve spreads of about 30 words, and one of 120.

Better
    The 120 words shared out over two or three spreads, each with its own picture.

When to let it stand
    The one long spread may be meant: a letter, a recipe, the grand ending, a page to pore over.
    A manuscript without marked pages is not judged, nor one that is far too long as a whole.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.reading._claims import (
    FAR_ABOVE_THE_BOOK,
    Claim,
    Matter,
    asked,
    claims,
    usual_words,
)
from proofkit.issue import Issue
from proofkit.reading.bands import AgeBand, band_named
from proofkit.settings import Settings

NAME = "reading/heavy-spread"
NEEDS = frozenset({Need.TEXT})
_CONFIDENCE = 0.45


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue, at the first words of the heaviest spread."""
    band = band_named(settings.age_band)
    heavy = [claim for claim in claims(book, band) if claim.matter is Matter.HEAVY]
    if heavy:
        message = _message(heavy[0], usual_words(book), band)
        yield asked(book, heavy, check=NAME, message=message, confidence=_CONFIDENCE)


def _message(heaviest: Claim, usual: float, band: AgeBand) -> str:
    here = f"{heaviest.amount} words on this {heaviest.step.kind}"
    if heaviest.amount >= FAR_ABOVE_THE_BOOK * usual:
        return f"{here}, where the book’s others have about {usual:.0f}"
    return f"{here}, where {band.plural} have {band.spread_words.most} on a spread at most"
