"""A paragraph of the galley in pieces: text as set, the marks in it, and the notes in its margin."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from proofkit.book import Span
from proofkit.reports.proof.corrections import Correction
from proofkit.reports.proof.marks import Kind
from proofkit.reports.proof.sheets import Block

_LONG = 70  # characters; a longer passage is put between corners instead of a stroke under it

# How the text itself is marked for each kind; the rest is a caret between two characters.
_STROKES = {
    Kind.DELETE: "struck",
    Kind.DELETE_CLOSE: "struck",
    Kind.SUBSTITUTE: "struck",
    Kind.CLOSE_UP: "arcs",
    Kind.REDUCE_SPACE: "arcs",
    Kind.TRANSPOSE: "trs",
    Kind.CAPITAL: "caps",
    Kind.LOWER_CASE: "ring",
    Kind.NEW_PARAGRAPH: "para",
    Kind.RUN_ON: "arcs",
    Kind.STET: "dots",
    Kind.QUERY: "asked",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """Some characters that are marked alike, with what comes right before them.

    ``notes``   the corrections whose marks begin in the word that begins here
    ``points``  the signs that stand here between two characters: "caret", "bar", "opens", "closes"
    ``also``    the corrections that have this place as another of theirs
    ``strokes``  how the characters are marked; ``numbers`` the corrections that mark them
    """

    text: str
    notes: tuple[Correction, ...]
    points: tuple[tuple[str, int], ...]
    also: tuple[Correction, ...]
    strokes: str
    numbers: str


@dataclass(frozen=True, slots=True, kw_only=True)
class _Stroke:
    start: int
    end: int
    name: str
    number: int


def galley(
    text: str,
    blocks: Sequence[Block],
    made: Iterable[Correction],
    elsewhere: Iterable[tuple[Span, Correction]],
) -> Mapping[Block, tuple[Piece, ...]]:
    """The paragraphs of a page's ``text``, cut at their marks.

    ``made`` are the page's own corrections; ``elsewhere`` has other places, here, of any. A mark between
    two paragraphs is made on the second.
    """
    ends = [block.end for block in blocks]
    noted: list[list[Correction]] = [[] for _ in blocks]
    touched: list[list[Correction]] = [[] for _ in blocks]
    also: list[list[tuple[int, Correction]]] = [[] for _ in blocks]
    for each in made:
        first = _first_reaching(ends, each.start)
        noted[first].append(each)
        last = max(first, _first_reaching(ends, each.end))
        for at in range(first, last + 1):
            touched[at].append(each)
    for span, each in elsewhere:
        at = _first_reaching(ends, span.start)
        if each not in noted[at]:  # its own note stands beside the paragraph already
            also[at].append((_clamped(span.start, blocks[at]), each))
    return {
        block: tuple(_pieces(text, block, noted[at], touched[at], also[at]))
        for at, block in enumerate(blocks)
    }


def _first_reaching(ends: Sequence[int], at: int) -> int:
    """The place of the first paragraph that ends there or later; of the last, if none does."""
    return min(bisect_left(ends, at), len(ends) - 1)


def _pieces(
    text: str,
    block: Block,
    noted: Iterable[Correction],
    touched: Sequence[Correction],
    also: Sequence[tuple[int, Correction]],
) -> Iterator[Piece]:
    notes = [(_word_start(text, block, each), each) for each in noted]
    strokes = [stroke for stroke in _strokes(text, touched) if stroke.start < block.end]
    points = [point for point in _points(touched) if block.start <= point[0] <= block.end]
    cuts = {block.start, block.end, *(at for at, _ in (*notes, *also)), *(at for at, *_ in points)}
    cuts |= {_clamped(at, block) for each in strokes for at in (each.start, each.end)}
    for first, last in [*pairwise(sorted(cuts)), (block.end, block.end)]:
        over = [stroke for stroke in strokes if stroke.start <= first < min(stroke.end, last)]
        yield Piece(
            text=text[first:last],
            notes=tuple(each for at, each in notes if at == first),
            points=tuple((name, number) for at, name, number in points if at == first),
            also=tuple(each for at, each in also if at == first),
            strokes=" ".join(dict.fromkeys(stroke.name for stroke in over)),
            numbers=" ".join(str(stroke.number) for stroke in over),
        )


def _word_start(text: str, block: Block, correction: Correction) -> int:
    """Where the word begins that a mark is in: a note inside it would part it for those who hear it."""
    at = _clamped(correction.start, block)
    while at < min(correction.end, block.end) and text[at].isspace():
        at += 1
    while at > block.start and not text[at - 1].isspace():
        at -= 1
    return at


def _clamped(at: int, block: Block) -> int:
    return min(max(at, block.start), block.end)


def _strokes(text: str, corrections: Iterable[Correction]) -> Iterator[_Stroke]:
    for each in corrections:
        if each.start < each.end and not _is_long(each):
            name = _STROKES.get(each.kind, "asked")
            start, end = _without_spaces(text, each) if name == "struck" else (each.start, each.end)
            if name == "struck" and end - start == 1:
                name = "slashed"  # a level stroke would miss a comma
            yield _Stroke(start=start, end=end, name=name, number=each.number)


def _points(corrections: Iterable[Correction]) -> Iterator[tuple[int, str, int]]:
    for each in corrections:
        if _is_long(each):
            yield each.start, "opens", each.number
            yield each.end, "closes", each.number
        elif each.kind is Kind.INSERT_SPACE:
            yield each.start, "bar", each.number
        elif each.start == each.end and each.kind is not Kind.QUERY:
            yield each.start, "caret", each.number


def _is_long(correction: Correction) -> bool:
    asked = correction.kind in (Kind.QUERY, Kind.STET)
    return asked and correction.end - correction.start > _LONG


def _without_spaces(text: str, correction: Correction) -> tuple[int, int]:
    """The struck words without the spaces at their ends: a stroke through a space looks like a dash."""
    words = text[correction.start : correction.end]
    start = correction.start + len(words) - len(words.lstrip())
    end = correction.end - len(words) + len(words.rstrip())
    return (start, end) if start < end else (correction.start, correction.end)
