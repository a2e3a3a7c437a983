"""Many texts in one request to the grammar engine, and its remarks back on each of them."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from proofkit.engines.pieces import Piece, pieces

if TYPE_CHECKING:
    from language_tool_python import Match as ToolMatch

_PIECE = 8_000  # characters: the longest text that is not cut
_REQUEST = 12_000  # characters: as many pieces as fit travel together
_JOINT = "\n\n"
_SUGGESTIONS = 8
# The engine counts UTF-16 units. A sign that takes two of them is shown to it as one that takes
# one, so that its places are ours.
_WIDE = re.compile(r"[\U00010000-\U0010ffff]")
_NARROW = "\u263a"


@dataclass(frozen=True, slots=True, kw_only=True)
class Remark:
    """What the engine remarks on one text; the places count its characters."""

    start: int
    end: int
    rule: str
    category: str
    message: str
    replacements: tuple[str, ...] = ()


def batches(texts: Sequence[str]) -> Iterator[list[str]]:
    """As many texts together as a request should hold."""
    batch: list[str] = []
    size = 0
    for text in texts:
        if batch and size + len(text) > _REQUEST:
            yield batch
            batch, size = [], 0
        batch.append(text)
        size += len(text)
    if batch:
        yield batch


class Joined:
    """Pieces of some texts, joined for one request, and the way back."""

    def __init__(self) -> None:
        self._places: list[tuple[int, int, Piece]] = []
        self._parts: list[str] = []
        self.size = 0

    @property
    def text(self) -> str:
        """What is sent."""
        return _WIDE.sub(_NARROW, _JOINT.join(self._parts))

    def add(self, number: int, piece: Piece) -> None:
        """Take in a piece of text ``number``."""
        self._places.append((self.size, number, piece))
        self._parts.append(piece.text)
        self.size += len(piece.text) + len(_JOINT)

    def remarks(self, found: Iterable[ToolMatch]) -> Iterator[tuple[int, Remark]]:
        """The remarks, each with its text's number. One that reaches over a piece's end is left out."""
        for match in found:
            at, number, piece = self._place(match.offset)
            start, end = match.offset - at, match.offset + match.error_length - at
            if end <= len(piece.text):
                yield number, _remark(match, piece.range(start, end))

    def _place(self, offset: int) -> tuple[int, int, Piece]:
        return self._places[bisect_right(self._places, offset, key=lambda place: place[0]) - 1]


def joined(texts: Sequence[str]) -> Iterator[Joined]:
    """The texts in pieces, as many in each request as it should hold."""
    request = Joined()
    for number, text in enumerate(texts):
        for piece in pieces(text, _PIECE):
            if request.size and request.size + len(piece.text) > _REQUEST:
                yield request
                request = Joined()
            request.add(number, piece)
    if request.size:
        yield request


def _remark(match: ToolMatch, place: tuple[int, int]) -> Remark:
    return Remark(
        start=place[0],
        end=place[1],
        rule=match.rule_id,
        category=match.category,
        message=match.message,
        replacements=tuple(r for r in match.replacements if _NARROW not in r)[:_SUGGESTIONS],
    )
