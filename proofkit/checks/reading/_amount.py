"""What the checks of this family share: where they point, and when a book is of another band."""

from __future__ import annotations

from itertools import islice

from proofkit.book import Book, Page, Span, counted_words
from proofkit.reading.bands import AgeBand

_OPENING_WORDS = 4
# Guidance differs by less than this between any two sources of one band.
_FAR = 2


def opening(page: Page, start: int = 0) -> Span:
    """The first few words from ``start`` on, of the one line: enough to find the place by."""
    prose = page.prose
    first = next(counted_words(prose[start:]))
    at = start + first.start()
    line = prose[at:].partition("\n")[0]
    *_, last = islice(counted_words(line), _OPENING_WORDS)
    return page.span(at, at + last.end())


def far_longer(book: Book, band: AgeBand) -> bool:
    """Whether the book has so many words that it can't be of this band."""
    return book.words > _FAR * band.words.most


def far_shorter(book: Book, band: AgeBand) -> bool:
    """Whether the book has so few words that it can't be of this band, nor a part of one."""
    return 0 < book.words < band.words.least / _FAR
