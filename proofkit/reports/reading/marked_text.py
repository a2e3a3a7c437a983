"""The text of a page, cut where something is to be marked: hard words, long sentences, what is no story."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from proofkit.book import count_words
from proofkit.reading.sentences import sentences
from proofkit.reading_report import ReadPage

_PARAGRAPH_END = re.compile(r"\n[ \t]*\n\s*")
_Range = tuple[int, int]


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """Some characters of a paragraph that are marked alike.

    ``hard``    a word beyond the age band
    ``aside``   no story: a heading, a note to the illustrator
    ``opens``   a long sentence begins here
    ``closes``  a long sentence ends here, and has so many words; else 0
    """

    text: str
    hard: bool
    aside: bool
    opens: bool
    closes: int


def paragraphs(
    page: ReadPage, hard: Iterable[_Range], longest: int
) -> tuple[tuple[Piece, ...], ...]:
    """The page's paragraphs in pieces; a sentence of more than ``longest`` words is a long one."""
    words, asides = tuple(hard), tuple(_asides(page.text, page.prose))
    long = {
        (start, end): count
        for start, end in sentences(page.prose)
        if (count := count_words(page.prose[start:end])) > longest
    }
    marks = _Marks(words=words, asides=asides, long=long)
    found = (tuple(marks.cut(page.text, *place)) for place in _paragraphs(page.text))
    return tuple(pieces for pieces in found if pieces)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Marks:
    words: Sequence[_Range]
    asides: Sequence[_Range]
    long: dict[_Range, int]

    def cut(self, text: str, start: int, end: int) -> Iterator[Piece]:
        edges = {at for place in (*self.words, *self.asides, *self.long) for at in place}
        inside = sorted({start, end, *(at for at in edges if start < at < end)})
        opened = {place[0] for place in self.long}
        closed = {place[1]: count for place, count in self.long.items()}
        for first, last in pairwise(inside):
            yield Piece(
                text=text[first:last],
                hard=_covered(first, self.words),
                aside=_covered(first, self.asides),
                opens=first in opened,
                closes=closed.get(last, 0),
            )


def _covered(at: int, ranges: Iterable[_Range]) -> bool:
    return any(start <= at < end for start, end in ranges)


def _paragraphs(text: str) -> Iterator[_Range]:
    at = 0
    for gap in _PARAGRAPH_END.finditer(text):
        yield at, gap.start()
        at = gap.end()
    yield at, len(text.rstrip())


def _asides(text: str, prose: str) -> Iterator[_Range]:
    """What the prose has blanked, with the white space inside it."""
    start = end = None
    for at, (own, told) in enumerate(zip(text, prose, strict=True)):
        if own != told:
            start = at if start is None else start
            end = at + 1
        elif start is not None and end is not None and not own.isspace():
            yield start, end
            start = end = None
    if start is not None and end is not None:
        yield start, end
