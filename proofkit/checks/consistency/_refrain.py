"""The same words again and again are one matter."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from proofkit.book import Book, Span

_WORD = re.compile(r"\w+")
_NEIGHBOURS = 2


def by_surroundings(book: Book, spans: Iterable[Span]) -> Iterator[list[Span]]:
    """The places grouped by their words and the two words on either side, in the book's order."""
    groups: dict[tuple[str, ...], list[Span]] = {}
    for span in spans:
        text = book.page(span.page).prose
        before = _WORD.findall(text[max(0, span.start - 60) : span.start])[-_NEIGHBOURS:]
        after = _WORD.findall(text[span.end : span.end + 60])[:_NEIGHBOURS]
        words = (*before, "|", book.quote(span), "|", *after)
        groups.setdefault(tuple(word.lower() for word in words), []).append(span)
    yield from groups.values()
