"""Text as engines like it: no piece too long, no gaps inside, and the way back to the page.

What is not story is blanked by spaces in a page's prose. A gap is shown to the engines as one
space, and every place that they name is carried back to the page.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import dataclass

# Half a sign, which a broken file may hold; engines can't be sent it.
_HALF = re.compile(r"[\ud800-\udfff]")
_UNKNOWN = "\ufffd"
_GAP = re.compile(r"[ \t\u00a0]{2,}")
_PARAGRAPH_END = re.compile(r"\n\s*\n")
# Where a text may be cut, best first.
_CUTS = (
    _PARAGRAPH_END,
    re.compile(r"\n"),
    re.compile(r"(?<=[.!?])\s|(?<=[.!?]['\"’”])\s"),
    re.compile(r"\s"),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """A stretch of a page's prose, its gaps closed.

    ``bends`` are the places where it and the page part: (place in ``text``, place on the page).
    """

    text: str
    bends: tuple[tuple[int, int], ...]

    def place(self, at: int) -> int:
        """The place on the page of the character at ``at``."""
        here, there = self.bends[bisect_right(self.bends, at, key=lambda bend: bend[0]) - 1]
        return there + at - here

    def range(self, start: int, end: int) -> tuple[int, int]:
        """The range on the page of the characters ``start`` to ``end``."""
        return self.place(start), self.place(end - 1) + 1 if end > start else self.place(start)


def pieces(prose: str, limit: int) -> Iterator[Piece]:
    """The prose of a page in pieces of about ``limit`` characters at most, cut between paragraphs.

    A paragraph longer than that is cut between sentences, or at last between words.
    """
    start = 0
    while start < len(prose):
        end = _cut(prose, start, limit)
        stretch = prose[start:end]
        if not stretch.isspace():
            yield _closed(stretch, start)
        start = end


def _cut(prose: str, start: int, limit: int) -> int:
    if len(prose) - start <= limit:
        return len(prose)
    for cut in _CUTS:
        ends = [found.end() for found in cut.finditer(prose, start + 1, start + limit)]
        if ends:
            return ends[-1]
    return start + limit


def _closed(stretch: str, start: int) -> Piece:
    parts, bends, at, length = [], [(0, start)], 0, 0
    for gap in _GAP.finditer(stretch):
        part = stretch[at : gap.start()] + " "
        parts.append(part)
        length += len(part)
        at = gap.end()
        bends.append((length, start + at))
    text = _HALF.sub(_UNKNOWN, "".join([*parts, stretch[at:]]))
    return Piece(text=text, bends=tuple(bends))
