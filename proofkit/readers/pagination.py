"""Blocks to leaves: where each page begins, what the author wrote above it, which side it is.

What marks pages, the surest first; only the surest that a manuscript has is used:

1. the author's own marks ("Page 3", "Spread 2", an empty heading). Breaks beside them start no page,
   except before the first mark, or where they far outnumber the marks.
2. page breaks, sections that start a page, form feeds.
3. numbers on lines of their own that count up, with little text between them.
4. the rows of a table.

Nothing of these: one leaf. An unlabelled part between two breaks counts as one view, page or spread.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace
from enum import StrEnum
from itertools import pairwise

from proofkit.book import count_words
from proofkit.readers.blocks import Block, Break, Part, plain
from proofkit.readers.events import Event, Reading, events_of
from proofkit.readers.marks import BARE, Kind, Mark, number_mark

# A view of a picture book holds far fewer words; longer parts are chapters.
MOST_WORDS_OF_A_VIEW = 250
_MOST_WORDS_TO_A_MARK = 1_000
_FEWEST_NUMBERS = 3
_FEWEST_ROWS = 4


class Scheme(StrEnum):
    """What marks the pages of a manuscript."""

    MARKS = "marks"
    BREAKS = "breaks"
    NUMBERS = "numbers"
    ROWS = "rows"
    NOTHING = "nothing"


@dataclass(slots=True, kw_only=True)
class Leaf:
    """A page in the making: the mark above it, the side it is, and its blocks.

    ``aside``: it stands before the story, so that even words without a role are no story.
    """

    mark: Mark | None = None
    part: Part | None = None
    aside: bool = False
    blocks: list[Block] = field(default_factory=list)

    @property
    def label(self) -> str:
        """What the author wrote above it, and the side if a line of its own gives it."""
        label = self.mark.label if self.mark else ""
        if self.part is None or (self.mark and self.mark.part):
            return label
        return f"{label}, {self.part}" if label else ""


def leaves_of(blocks: Sequence[Block]) -> tuple[list[Leaf], Scheme]:
    """The leaves of a manuscript, and what marked them."""
    scheme = _scheme(list(events_of(blocks, Reading())))
    reading = Reading(
        labels=scheme is not Scheme.BREAKS,
        numbers=scheme is Scheme.NUMBERS,
        matters=scheme in {Scheme.MARKS, Scheme.NUMBERS},
        sides=scheme is not Scheme.NOTHING,
    )
    events = list(events_of(blocks, reading))
    if scheme is Scheme.NOTHING:
        return [Leaf(blocks=[event for event in events if isinstance(event, Block)])], scheme
    return _without_stray_blanks(_leaves(events, scheme), scheme), scheme


def _leaves(events: Sequence[Event], scheme: Scheme) -> list[Leaf]:
    starts = _StartsPage(events, scheme)
    leaves = [Leaf()]
    broke = False
    for event in events:
        if isinstance(event, Mark):
            mark = _with_mark_before(leaves, event)
            leaves.append(Leaf(mark=mark, part=mark.part))
            starts.marked = True
        elif isinstance(event, Part):
            _turn(leaves, event)
        elif isinstance(event, Block):
            leaves[-1].blocks.append(replace(event, before=Break.PAGE) if broke else event)
        elif starts(event):
            leaves.append(Leaf())
        broke = event is Break.PAGE
    return leaves


def _with_mark_before(leaves: list[Leaf], mark: Mark) -> Mark:
    """The mark, and what a mark right above it adds: an empty heading nothing, a number its number."""
    above = leaves[-1]
    if above.mark is None or above.blocks:
        return mark
    if above.mark is BARE and mark is not BARE:
        leaves.pop()
    elif mark.kind is Kind.MATTER and above.mark.role is None:
        leaves.pop()
        label = f"{above.mark.label}: {mark.label}"
        return replace(above.mark, label=label, role=mark.role)
    return mark


class _StartsPage:
    """Whether a break starts a page of its own. ``marked`` is set once the first mark has come."""

    def __init__(self, events: Sequence[Event], scheme: Scheme) -> None:
        self.marked = False
        self._wanted = Break.ROW if scheme is Scheme.ROWS else Break.PAGE
        self._always = scheme in {Scheme.BREAKS, Scheme.ROWS} or _breaks_outnumber(events)

    def __call__(self, event: Break) -> bool:
        return event is self._wanted and (self._always or not self.marked)


def _turn(leaves: list[Leaf], side: Part) -> None:
    """Go to the left or right page of the spread; what stood before its first side goes with it."""
    leaf = leaves[-1]
    if leaf.part is None:
        leaf.part = side
    elif leaf.part is not side:
        leaves.append(Leaf(mark=leaf.mark, part=side))


def _without_stray_blanks(leaves: list[Leaf], scheme: Scheme) -> list[Leaf]:
    """A mark with nothing after it is a blank page; a break is one only between pages with text."""
    filled = [index for index, leaf in enumerate(leaves) if leaf.blocks]
    inner = range(filled[0], filled[-1]) if filled and scheme is Scheme.BREAKS else ()
    return [leaf for index, leaf in enumerate(leaves) if leaf.blocks or leaf.mark or index in inner]


def _scheme(events: Sequence[Event]) -> Scheme:
    blocks = [event for event in events if isinstance(event, Block)]
    words = sum(count_words(block.text) for block in blocks)
    marks = sum(isinstance(event, Mark) and event.kind is not Kind.MATTER for event in events)
    breaks = Break.PAGE in _inner(events)
    if breaks and _at_page_ends(events):
        return Scheme.BREAKS
    if marks and words <= marks * _MOST_WORDS_TO_A_MARK:
        return Scheme.MARKS
    if breaks:
        return Scheme.NUMBERS if _numbers_head_pages(events) else Scheme.BREAKS
    if _numbers_count_up(blocks):
        return Scheme.NUMBERS
    rows = sum(event is Break.ROW for event in events)
    if rows >= _FEWEST_ROWS and words <= rows * MOST_WORDS_OF_A_VIEW:
        return Scheme.ROWS
    return Scheme.NOTHING


def _at_page_ends(events: Sequence[Event]) -> bool:
    """Whether marks come right before the breaks: they are then the pages' feet, not their heads."""
    after = [*events[1:], Break.PAGE]
    marks = [
        following for event, following in zip(events, after, strict=True) if isinstance(event, Mark)
    ]
    ends = sum(following is Break.PAGE for following in marks)
    texts_first = sum(
        event is Break.PAGE and isinstance(following, Block)
        for event, following in pairwise(events)
    )
    return len(marks) >= _FEWEST_NUMBERS and ends == len(marks) and texts_first * 2 >= len(marks)


def _numbers_head_pages(events: Sequence[Event]) -> bool:
    """Whether most breaks have a lone number after them, and the numbers count up."""
    heads = [
        number_mark(plain(following.text))
        for event, following in pairwise(events)
        if event is Break.PAGE and isinstance(following, Block)
    ]
    numbers = [mark.numbers[0] for mark in heads if mark]
    return (
        len(numbers) >= _FEWEST_NUMBERS
        and len(numbers) * 2 > len(heads)
        and numbers == sorted(set(numbers))
    )


def _inner(events: Sequence[Event]) -> list[Event]:
    """The events between the first text and the last."""
    texts = [index for index, event in enumerate(events) if isinstance(event, Block)]
    return list(events[texts[0] : texts[-1]]) if texts else []


def _numbers_count_up(blocks: Sequence[Block]) -> bool:
    """Whether lone numbers head short parts of the text, rather than end pages or head chapters."""
    marks = [number_mark(plain(block.text)) for block in blocks]
    numbers = [mark.numbers[0] for mark in marks if mark]
    if len(numbers) < _FEWEST_NUMBERS or marks[-1]:
        return False
    steps = [after - before for before, after in pairwise(numbers)]
    if sum(step in {1, 2} for step in steps) < len(steps) * 0.7:
        return False
    words = sum(count_words(block.text) for block in blocks)
    return words <= MOST_WORDS_OF_A_VIEW * len(numbers)


def _breaks_outnumber(events: Iterable[Event]) -> bool:
    """Whether breaks with text but no mark after them are more than twice the marks."""
    events = list(events)
    marks = sum(isinstance(event, Mark) for event in events)
    alone = sum(
        event is Break.PAGE and isinstance(after, Block) for event, after in pairwise(events)
    )
    return alone > 2 * marks
