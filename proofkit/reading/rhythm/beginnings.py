"""Three sentences in a row that begin alike: “He ran to the gate. He pulled at it. He gave up.”

Silent where the likeness is made on purpose: a line that the book says again elsewhere, sentences built
alike beyond the first word (“She looked in the box. She looked in the bag.”), very short ones, cries
(“Such a sky! Such grass!”) and speech.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from proofkit.book import Book, Page
from proofkit.reading.rhythm.place import WORD, RhythmPlace, Stumble, prose_paragraphs
from proofkit.reading.sentences import sentences
from proofkit.words.lists import word_set
from proofkit.words.quotations import Quotations

_IN_A_ROW = 3
_SHORT = 4  # words: three sentences of fewer are a drum beat, and meant
_NO_SUBJECT = word_set(
    "the a an this that these those his her my your our their its no not in on up down"
)


def alike_beginnings(book: Book, speech: Quotations) -> Iterator[RhythmPlace]:
    """The first three of each run of sentences that begin alike."""
    pages = _pages_by_opening(book)
    for page, start, end in prose_paragraphs(book):
        places = [(s + start, e + start) for s, e in sentences(page.prose[start:end])]
        at = 0
        while at + _IN_A_ROW <= len(places):
            run = places[at : at + _IN_A_ROW]
            if _alike(page, run, speech) and not _is_refrain(page, run, pages):
                yield _place(page, run)
                at += _same_as_first(page, places, at)
            else:
                at += 1


def _opening(page: Page, start: int, end: int) -> tuple[str, ...]:
    """The first words of a sentence, in lower case, up to three."""
    words = [match.group().lower() for match in WORD.finditer(page.prose, start, end)]
    return tuple(words[:3])


def _alike(page: Page, run: Sequence[tuple[int, int]], speech: Quotations) -> bool:
    if any(speech.speaks(page.number, at) for start, end in run for at in (start + 1, end - 2)):
        return False
    if any(page.prose[start] in "“‘\"'" or page.prose[end - 1] in "…!" for start, end in run):
        return False
    openings = [_opening(page, start, end) for start, end in run]
    lengths = [len(WORD.findall(page.prose, start, end)) for start, end in run]
    size = 2 if openings[0][0] in _NO_SUBJECT else 1
    firsts = {opening[:size] for opening in openings}
    seconds = {opening[: size + 1] for opening in openings}
    return (
        len(firsts) == 1
        and len(seconds) == _IN_A_ROW
        and min(map(len, openings)) > size
        and max(lengths) > _SHORT
    )


def _same_as_first(page: Page, places: Sequence[tuple[int, int]], at: int) -> int:
    """How many sentences from ``at`` on begin with the same word."""
    first = _opening(page, *places[at])[:1]
    return next(
        (n for n, place in enumerate(places[at:]) if _opening(page, *place)[:1] != first),
        len(places) - at,
    )


def _pages_by_opening(book: Book) -> Counter[tuple[str, ...]]:
    """On how many pages each opening of three words stands."""
    return Counter(
        opening
        for page in book.story_pages
        for opening in {_opening(page, start, end) for start, end in sentences(page.prose)}
    )


def _is_refrain(
    page: Page, run: Sequence[tuple[int, int]], pages: Counter[tuple[str, ...]]
) -> bool:
    return any(pages[_opening(page, start, end)] > 1 for start, end in run)


def _place(page: Page, run: Sequence[tuple[int, int]]) -> RhythmPlace:
    firsts = [WORD.search(page.prose, start, end) for start, end in run]
    return RhythmPlace(
        kind=Stumble.BEGINNINGS,
        span=page.span(run[0][0], run[-1][1]),
        words=tuple(page.span(*first.span()) for first in firsts if first),
    )
