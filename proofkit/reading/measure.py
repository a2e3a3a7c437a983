"""Measuring a book: how long its pages and sentences are, and how hard they are to read."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate

from proofkit.book import Book, Page, counted_words
from proofkit.reading.formulas import (
    SMALLEST_SAMPLE,
    flesch_kincaid_grade,
    flesch_reading_ease,
)
from proofkit.reading.sentences import sentences
from proofkit.reading.syllables import syllables


@dataclass(frozen=True, slots=True, kw_only=True)
class PageReading:
    """The measures of one page of story.

    ``page``  its 1-based place in the book's pages
    ``mean_sentence``, ``longest_sentence``  in words; a sentence ends with its page
    ``flesch_reading_ease``, ``flesch_kincaid_grade``  None where the page or the book has too few
        words for a score
    ``run``   the first and last page that the two scores belong to, where the page itself has fewer
        than 100 words; None where they are the page's own, or there are none
    """

    page: int
    words: int
    sentences: int
    mean_sentence: float
    longest_sentence: int
    syllables_per_word: float
    flesch_reading_ease: float | None
    flesch_kincaid_grade: float | None
    run: tuple[int, int] | None


@dataclass(frozen=True, slots=True, kw_only=True)
class SpreadReading:
    """How many words of story a spread has, and the places of its pages in the book."""

    spread: int
    words: int
    pages: tuple[int, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class BookReading:
    """The measures of the whole story, its pages and its spreads.

    Pages that carry no story (the title, the imprint) are left out; blank pages of the story are in,
    with noughts. ``spreads`` is empty where the spreads are unknown.
    """

    words: int
    sentences: int
    mean_sentence: float
    longest_sentence: int
    syllables_per_word: float
    flesch_reading_ease: float | None
    flesch_kincaid_grade: float | None
    pages: tuple[PageReading, ...]
    spreads: tuple[SpreadReading, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Counts:
    words: int = 0
    sentences: int = 0
    syllables: int = 0
    longest: int = 0

    @property
    def mean_sentence(self) -> float:
        return self.words / self.sentences if self.sentences else 0.0

    @property
    def syllables_per_word(self) -> float:
        return self.syllables / self.words if self.words else 0.0

    @property
    def ease(self) -> float | None:
        if self.words < SMALLEST_SAMPLE:
            return None
        return flesch_reading_ease(
            words=self.words, sentences=self.sentences, syllables=self.syllables
        )

    @property
    def grade(self) -> float | None:
        if self.words < SMALLEST_SAMPLE:
            return None
        return flesch_kincaid_grade(
            words=self.words, sentences=self.sentences, syllables=self.syllables
        )


def measure(book: Book) -> BookReading:
    """All measures of the book's story.

    The formulas are made for 100 words and more. A shorter page is given the score of the smallest
    run of whole pages around it that has 100 words, the one that leaves it nearest to the middle; a
    book of fewer has no score.
    """
    pages = book.story_pages
    counts = [_counts(page.prose) for page in pages]
    whole = _sum(counts)
    so_far = [0, *accumulate(page.words for page in counts)]
    return BookReading(
        words=whole.words,
        sentences=whole.sentences,
        mean_sentence=whole.mean_sentence,
        longest_sentence=whole.longest,
        syllables_per_word=whole.syllables_per_word,
        flesch_reading_ease=whole.ease,
        flesch_kincaid_grade=whole.grade,
        pages=tuple(_page_reading(pages, counts, so_far, at) for at in range(len(pages))),
        spreads=tuple(_spread_reading(pages, counts, spread) for spread in book.spreads),
    )


def _counts(prose: str) -> _Counts:
    words = beats = spoken = longest = 0
    for start, end in sentences(prose):
        beats_of_words = [syllables(word.group()) for word in counted_words(prose[start:end])]
        words += len(beats_of_words)
        beats += sum(beats_of_words)
        longest = max(longest, len(beats_of_words))
        spoken += 1
    return _Counts(words=words, sentences=spoken, syllables=beats, longest=longest)


def _sum(counts: Sequence[_Counts]) -> _Counts:
    return _Counts(
        words=sum(c.words for c in counts),
        sentences=sum(c.sentences for c in counts),
        syllables=sum(c.syllables for c in counts),
        longest=max((c.longest for c in counts), default=0),
    )


def _page_reading(
    pages: Sequence[Page], counts: Sequence[_Counts], so_far: Sequence[int], at: int
) -> PageReading:
    own = counts[at]
    first, last = _run(so_far, at) if own.words else (at, at)
    scored = _sum(counts[first : last + 1])
    return PageReading(
        page=pages[at].number,
        words=own.words,
        sentences=own.sentences,
        mean_sentence=own.mean_sentence,
        longest_sentence=own.longest,
        syllables_per_word=own.syllables_per_word,
        flesch_reading_ease=scored.ease,
        flesch_kincaid_grade=scored.grade,
        run=None if first == last else (pages[first].number, pages[last].number),
    )


def _run(so_far: Sequence[int], at: int) -> tuple[int, int]:
    """The places of the first and last page of the run that scores the page at ``at``.

    ``so_far`` holds the words before each page, and last those of the whole book.
    """
    pages = len(so_far) - 1 if so_far[-1] >= SMALLEST_SAMPLE else 0
    for length in range(1, pages + 1):
        firsts = range(max(0, at - length + 1), min(at, pages - length) + 1)
        enough = [f for f in firsts if so_far[f + length] - so_far[f] >= SMALLEST_SAMPLE]
        if enough:
            first = min(enough, key=lambda f: abs(2 * (at - f) - (length - 1)))
            return first, first + length - 1
    return at, at


def _spread_reading(pages: Sequence[Page], counts: Sequence[_Counts], spread: int) -> SpreadReading:
    on_it = [at for at, page in enumerate(pages) if page.spread == spread]
    return SpreadReading(
        spread=spread,
        words=sum(counts[at].words for at in on_it),
        pages=tuple(pages[at].number for at in on_it),
    )
