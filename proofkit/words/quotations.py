"""Who speaks where: the quotation marks of a whole book, read as one row over paragraphs and pages.

Of all ways to read the marks as opening, closing or neither, the one with the fewest slips is taken
(dynamic programming over two states, inside and outside a quotation). A speech may run on into the
next paragraph or page, with its opening mark repeated there or not. Double and single marks are two
rows of their own; which of them carries the speech is the book's habit.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from enum import Enum
from functools import lru_cache

from proofkit.book import Book, Span
from proofkit.words.quotation_marks import Block, Mark, blocks_of

_LOST = 2.5  # a mark that is missing
_CARRIED = 0.8  # a speech that goes on in the next paragraph
_CARRIED_OVER_PAGE = 0.4
_CARRIED_PAST_REPORT = 3.0  # the words after the last mark say who spoke: the speech was over
_REOPENED_AFTER_GAP = 1.5  # the paragraph before the repeated opening mark has no mark at all
_SAID = "(?:said|asked|cried|replied|answered|shouted|whispered|exclaimed|added|called)"
_REPORTED = re.compile(
    rf"[,!?]['’]? (?:{_SAID} (?:(?:the|a|an|his|her|my|little|old) |[A-Z])\w+|(?:he|she|they) {_SAID}\s*(?:[.,]|$))"
)
_NESTED = re.compile(r"(?:^|\s)(?:['‘\"“]|'')\w")
_SINGLE_SPEECH = re.compile(r"[,.!?…—]['’](?=\s|$)", re.MULTILINE)
_ANY_OPENING = re.compile(r"(?:^|(?<=\s))(?:[\"“'‘]|'')(?=\w)|[\"“”„]", re.MULTILINE)
_ANY_DOUBLE = re.compile("[\"“”„]|''")


@dataclass(frozen=True, slots=True, kw_only=True)
class Quotation:
    """Words between marks. ``opening`` or ``closing`` is None where that mark is missing.

    ``reopenings``  the marks that repeat the opening one in later paragraphs of the same speech
    ``parts``       the words, one stretch for each paragraph, marks left out; where a mark is
                    missing, the stretch runs to the paragraph's edge or the next mark
    """

    opening: Mark | None
    closing: Mark | None
    reopenings: tuple[Mark, ...] = ()
    parts: tuple[Span, ...] = ()

    @property
    def whole(self) -> bool:
        """Whether both its marks are there."""
        return self.opening is not None and self.closing is not None

    @property
    def span(self) -> Span | None:
        """From mark to mark, both included; None where one is missing or it runs over a page."""
        if self.opening is None or self.closing is None:
            return None
        page, start = self.opening.span.page, self.opening.span.start
        if self.closing.span.page != page:
            return None
        return Span(page=page, start=start, end=self.closing.span.end)


@dataclass(frozen=True, slots=True, kw_only=True)
class Quotations:
    """All quotations of a book.

    ``double``  whether the book's speech stands in double marks
    ``spoken``  every stretch of words in the marks of speech, in order
    """

    double: bool
    doubles: tuple[Quotation, ...]
    singles: tuple[Quotation, ...]
    strays: tuple[Mark, ...]
    spoken: tuple[Span, ...]

    @property
    def speech(self) -> tuple[Quotation, ...]:
        """The quotations in the marks that the book uses for speech."""
        return self.doubles if self.double else self.singles

    @property
    def other(self) -> tuple[Quotation, ...]:
        """The quotations in the other marks: speech in speech, titles, single words."""
        return self.singles if self.double else self.doubles

    def speaks(self, page: int, at: int) -> bool:
        """Whether the character ``at`` of a page lies inside quotation marks that carry speech."""
        place = bisect_right(self.spoken, (page, at), key=lambda part: (part.page, part.start)) - 1
        part = self.spoken[place] if place >= 0 else None
        return part is not None and part.page == page and at < part.end


class _Deed(Enum):
    OPEN = "open"
    REOPEN = "reopen"
    CLOSE = "close"
    BREAK_OFF = "break off"  # the speech ends without its mark
    SKIP = "skip"  # an apostrophe, a stray
    CARRY = "carry"  # nothing happens, or the speech runs on


@dataclass(frozen=True, slots=True, kw_only=True)
class _Event:
    """A mark (``mark``), or else the end of a paragraph.

    ``over_page``  whether the next paragraph is on another page
    ``after_gap``  whether the paragraph before the mark's has no mark
    ``reported``   whether the words from the last mark to the paragraph's end say who spoke
    """

    block: Block
    mark: Mark | None = None
    over_page: bool = False
    after_gap: bool = False
    reported: bool = False


_Step = tuple[float, bool, tuple[_Deed, ...]]  # cost, state before, what happens


# Many checks ask for the same book, one after the other.
@lru_cache(maxsize=1)
def quotations_of(book: Book) -> Quotations:
    """Read all quotation marks of the book's story."""
    blocks = blocks_of(book)
    double = speaks_in_doubles(book)
    doubles, strays = _read(book, blocks, double=True)
    singles, loose = _read(book, blocks, double=False)
    return Quotations(
        double=double,
        doubles=doubles,
        singles=singles,
        strays=strays if double else (*strays, *loose),
        spoken=tuple(part for q in (doubles if double else singles) for part in q.parts),
    )


def speaks_in_doubles(book: Book) -> bool:
    """Whether the book's speech stands in double marks; a book without speech counts as such."""
    singles = sum(len(_SINGLE_SPEECH.findall(page.prose)) for page in book.pages)
    doubles = sum(len(_ANY_DOUBLE.findall(page.prose)) for page in book.pages)
    if singles == 0 or 2 * singles != doubles:
        return 2 * singles < doubles or singles == 0
    openings = (_ANY_OPENING.search(page.prose) for page in book.pages)
    first = next((m.group() for m in openings if m), '"')
    return first not in ("'", "‘")


def _read(
    book: Book, blocks: Sequence[Block], *, double: bool
) -> tuple[tuple[Quotation, ...], tuple[Mark, ...]]:
    events = list(_events(book, blocks, double=double))
    return _gather(events, _best(events))


def _events(book: Book, blocks: Sequence[Block], *, double: bool) -> Iterator[_Event]:
    gap = False
    for at, block in enumerate(blocks):
        marks = [mark for mark in block.marks if mark.double is double]
        yield from (_Event(block=block, mark=mark, after_gap=gap) for mark in marks)
        tail = marks[-1].span.end if marks else block.start
        words = book.page(block.page).prose[tail : block.end]
        over_page = at + 1 < len(blocks) and blocks[at + 1].page != block.page
        yield _Event(block=block, over_page=over_page, reported=bool(marks) and _reported(words))
        gap = not marks


def _reported(words: str) -> bool:
    """Whether a plain *said the fox* ends the speech, and none of a story told in speech."""
    return _REPORTED.search(words) is not None and _NESTED.search(words) is None


def _best(events: Sequence[_Event]) -> list[tuple[_Deed, ...]]:
    """What happens at each event in the reading that costs least."""
    costs = {False: 0.0, True: float("inf")}
    trail: list[dict[bool, _Step]] = []
    for event in events:
        steps: dict[bool, _Step] = {}
        for before, cost in costs.items():
            for extra, after, deeds in _choices(event, inside=before):
                total = cost + extra
                if after not in steps or total < steps[after][0]:
                    steps[after] = (total, before, deeds)
        trail.append(steps)
        costs = {state: step[0] for state, step in steps.items()}
        costs.setdefault(True, float("inf"))
    state = min(costs, key=lambda s: costs[s] + (_LOST if s else 0))
    chosen = []
    for steps in reversed(trail):
        _, before, deeds = steps[state]
        chosen.append(deeds)
        state = before
    return chosen[::-1]


def _choices(event: _Event, *, inside: bool) -> Iterator[_Step]:
    mark = event.mark
    if mark is None:
        yield from _at_paragraph_end(event, inside=inside)
        return
    yield mark.neither, inside, (_Deed.SKIP,)
    if inside:
        yield mark.closing, False, (_Deed.CLOSE,)
        yield _LOST + mark.opening, True, (_Deed.BREAK_OFF, _Deed.OPEN)
        if mark.first:
            gap = _REOPENED_AFTER_GAP if event.after_gap else 0.0
            yield gap + mark.opening, True, (_Deed.REOPEN,)
    else:
        yield mark.opening, True, (_Deed.OPEN,)
        yield _LOST + mark.closing, False, (_Deed.CLOSE,)


def _at_paragraph_end(event: _Event, *, inside: bool) -> Iterator[_Step]:
    if not inside:
        yield 0.0, False, (_Deed.CARRY,)
        return
    yield _LOST, False, (_Deed.BREAK_OFF,)
    cost = _CARRIED_OVER_PAGE if event.over_page else _CARRIED
    yield _CARRIED_PAST_REPORT if event.reported else cost, True, (_Deed.CARRY,)


def _gather(
    events: Sequence[_Event], deeds: Iterable[tuple[_Deed, ...]]
) -> tuple[tuple[Quotation, ...], tuple[Mark, ...]]:
    """The quotations and the strays that a reading amounts to."""
    gatherer = _Gatherer()
    for event, done in zip(events, deeds, strict=True):
        for deed in done:
            gatherer.take(event, deed)
    gatherer.end()
    return tuple(gatherer.quotations), tuple(gatherer.strays)


class _Gatherer:
    """Turns what happens at each mark into quotations."""

    def __init__(self) -> None:
        self.quotations: list[Quotation] = []
        self.strays: list[Mark] = []
        self._opening: Mark | None = None
        self._reopenings: list[Mark] = []
        self._parts: list[Span] = []
        self._block: Block | None = None
        self._from = 0

    def take(self, event: _Event, deed: _Deed) -> None:
        self._enter(event.block)
        mark = event.mark
        at = mark.span.start if mark else event.block.end
        if deed is _Deed.OPEN:
            self._opening = mark
        elif deed is _Deed.REOPEN and mark:
            self._reopenings.append(mark)
        elif deed is _Deed.SKIP and mark:
            if mark.neither > 2:
                self.strays.append(mark)
            return
        elif self._opening or deed is _Deed.CLOSE:
            self._part(event.block.page, at)
            if deed is not _Deed.CARRY:
                self._finish(mark if deed is _Deed.CLOSE else None)
        self._from = mark.span.end if mark else event.block.end

    def end(self) -> None:
        if self._opening:
            self._finish(None)

    def _enter(self, block: Block) -> None:
        if block is not self._block:
            self._block, self._from = block, block.start

    def _part(self, page: int, end: int) -> None:
        if end > self._from:
            self._parts.append(Span(page=page, start=self._from, end=end))

    def _finish(self, closing: Mark | None) -> None:
        self.quotations.append(
            Quotation(
                opening=self._opening,
                closing=closing,
                reopenings=tuple(self._reopenings),
                parts=tuple(self._parts),
            )
        )
        self._opening = None
        self._reopenings, self._parts = [], []
