"""The ellipses of a book."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from proofkit.book import Book, Span

# Three points or more, closed up or spaced; a leader of many points is no ellipsis.
_POINTS = re.compile(r"…+|(?<!\.)\.{3,5}(?!\.)|(?<![. ])[ ]?\.(?: \.){2,3}(?!\.)")


@dataclass(frozen=True, slots=True, kw_only=True)
class Points:
    """One ellipsis, ``span`` without the spaces around it.

    ``before`` and ``after`` are the story's characters next to it, "" at the edges of its page.
    """

    span: Span
    text: str
    before: str
    after: str


def ellipses(book: Book) -> Iterator[Points]:
    """Every ellipsis of the story, in order."""
    for page in book.pages:
        prose = page.prose
        for match in _POINTS.finditer(prose):
            start = match.start() + match.group().startswith(" ")
            yield Points(
                span=page.span(start, match.end()),
                text=prose[start : match.end()],
                before=prose[start - 1 : start] if start else "",
                after=prose[match.end() : match.end() + 1],
            )
