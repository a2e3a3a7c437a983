"""The same words again and again are one matter.

Each place must be mended, so a proofreader marks each page that has one. Only where the same words come
back all through a book is one row enough, which lists the others.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from proofkit.book import Book, Span

_REFRAIN = 5
_WORD = re.compile(r"\w+")
_NEIGHBOURS = 2


def by_surroundings(book: Book, spans: Iterable[Span]) -> Iterator[list[Span]]:
    """The places by their words and the two on each side: page by page, or as one where they come back."""
    groups: dict[tuple[str, ...], list[Span]] = {}
    for span in spans:
        text = book.page(span.page).prose
        before = _WORD.findall(text[max(0, span.start - 60) : span.start])[-_NEIGHBOURS:]
        after = _WORD.findall(text[span.end : span.end + 60])[:_NEIGHBOURS]
        words = (*before, "|", book.quote(span), "|", *after)
        groups.setdefault(tuple(word.lower() for word in words), []).append(span)
    for group in groups.values():
        yield from one_by_one(group)


def one_by_one(spans: list[Span]) -> Iterator[list[Span]]:
    """The places of one matter, a page's together; all as one if they are as many as a refrain's."""
    if len(spans) >= _REFRAIN:
        yield spans
        return
    for page in dict.fromkeys(span.page for span in spans):
        yield [span for span in spans if span.page == page]
