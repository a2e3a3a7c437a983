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
from dataclasses import dataclass
from statistics import median

from proofkit.analysis import Analysis
from proofkit.book import Book, Page
from proofkit.checks.check import Need
from proofkit.checks.reading._amount import far_longer, opening
from proofkit.issue import Issue, Tier, issue_at
from proofkit.reading.bands import AgeBand, band_named
from proofkit.settings import Settings

NAME = "reading/heavy-spread"
NEEDS = frozenset({Need.TEXT})
_CONFIDENCE = 0.45
_FAR_ABOVE_THE_BAND = 2
_FAR_ABOVE_THE_BOOK = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class _Step:
    """What lies open at once: the pages of a spread, or one page."""

    kind: str
    pages: tuple[Page, ...]
    words: int


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue, at the first words of the heaviest spread."""
    band = band_named(settings.age_band)
    if not book.paginated or far_longer(book, band):
        return
    steps = _steps(book)
    usual = median(step.words for step in steps) if steps else 0
    heavy = sorted(
        (step for step in steps if _is_heavy(step.words, usual, band)), key=lambda step: -step.words
    )
    if heavy:
        places = [opening(next(page for page in step.pages if page.words)) for step in heavy]
        yield issue_at(
            book,
            places[0],
            check=NAME,
            tier=Tier.QUERY,
            message=_message(heavy[0], usual, band),
            confidence=_CONFIDENCE,
            related=sorted(places[1:]),
        )


def _steps(book: Book) -> list[_Step]:
    by_place: dict[tuple[str, int], list[Page]] = {}
    for page in book.story_pages:
        place = ("page", page.number) if page.spread is None else ("spread", page.spread)
        by_place.setdefault(place, []).append(page)
    steps = [
        _Step(kind=kind, pages=tuple(pages), words=sum(page.words for page in pages))
        for (kind, _), pages in by_place.items()
    ]
    return [step for step in steps if step.words]


def _is_heavy(words: int, usual: float, band: AgeBand) -> bool:
    allowed = band.spread_words.most
    return words > _FAR_ABOVE_THE_BAND * allowed or (
        words > allowed and words >= _FAR_ABOVE_THE_BOOK * usual
    )


def _message(step: _Step, usual: float, band: AgeBand) -> str:
    if step.words >= _FAR_ABOVE_THE_BOOK * usual:
        return f"{step.words} words on this {step.kind}, where the book’s others have about {usual:.0f}"
    return f"{step.words} words on this {step.kind}, where {band.plural} have {band.spread_words.most} on a spread at most"
