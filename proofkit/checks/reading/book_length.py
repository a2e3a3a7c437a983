"""A book far longer or far shorter than books for its age.

What it finds
    A story with more than twice the words that the longest books of its age band have, or with fewer
    than half of the shortest.

Why a reader minds
    An editor reads the word count first. A picture book is thirty-two pages and one bedtime; a
    manuscript three times as long is often turned down unread, however good.

Example
    2,450 words, checked as a picture book.

Better
    800 words; or the same story as an early reader, checked with --age-band early-reader.

When to let it stand
    No length is a rule. Where the manuscript is only a part of the book, or a treasury of several
    stories, its length says nothing.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.reading._amount import far_longer, far_shorter, opening
from proofkit.issue import Issue, Tier, issue_at
from proofkit.reading.bands import AgeBand, band_named
from proofkit.settings import Settings

NAME = "reading/book-length"
NEEDS = frozenset({Need.TEXT})
_CONFIDENCE = 0.5


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue, at the first words of the story."""
    message = _message(book, band_named(settings.age_band))
    if message:
        first = next(page for page in book.story_pages if page.words)
        yield issue_at(
            book,
            opening(first),
            check=NAME,
            tier=Tier.QUERY,
            message=message,
            confidence=_CONFIDENCE,
        )


def _message(book: Book, band: AgeBand) -> str | None:
    if far_longer(book, band):
        usual = f"{band.plural} have {band.words.most:,} at most"
    elif far_shorter(book, band):
        usual = f"{band.plural} have at least {band.words.least:,}"
    else:
        return None
    return f"{book.words:,} words in the book, where {usual}"
