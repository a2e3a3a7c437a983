"""Measuring a book: how long its pages and sentences are, and how hard they are to read."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate
from typing import TypedDict

from proofkit.book import Book, Page
from proofkit.reading.counts import Counter, Counts, total
from proofkit.reading.familiar import WordList
from proofkit.reading.formulas import (
    SMALLEST_SAMPLE,
    SMALLEST_SMOG_SAMPLE,
    automated_readability_index,
    coleman_liau_grade,
    dale_chall_cloze,
    dale_chall_score,
    flesch_kincaid_grade,
    flesch_reading_ease,
    gunning_fog_index,
    smog_grade,
    spache_grade,
)
from proofkit.words.vocabulary import Vocabulary, vocabulary_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Measures:
    """The measures of a page, a spread or a book.

    ``mean_sentence``, ``longest_sentence``  in words; a sentence ends with its page
    ``off_spache``, ``off_dale_chall``  how many of a hundred words are not on the list
    the scores from ``flesch_reading_ease`` on  by the formulas of those names; None where there are
        too few words, or for SMOG too few sentences, to tell
    """

    words: int
    sentences: int
    mean_sentence: float
    longest_sentence: int
    syllables_per_word: float
    off_spache: float
    off_dale_chall: float
    flesch_reading_ease: float | None
    flesch_kincaid_grade: float | None
    spache: float | None
    dale_chall: float | None
    dale_chall_cloze: float | None
    smog: float | None
    coleman_liau: float | None
    ari: float | None
    gunning_fog: float | None

    def off_list(self, which: WordList) -> float:
        """How many of a hundred words are not on the list."""
        return self.off_spache if which is WordList.SPACHE else self.off_dale_chall


@dataclass(frozen=True, slots=True, kw_only=True)
class PageReading(Measures):
    """The measures of one page of story.

    ``page``  its 1-based place in the book's pages
    ``run``   the first and last page that the scores belong to, where the page itself has fewer than
        100 words; None where they are the page's own, or there are none
    """

    page: int
    run: tuple[int, int] | None


@dataclass(frozen=True, slots=True, kw_only=True)
class SpreadReading(Measures):
    """The measures of one spread.

    ``spread``  its number
    ``pages``   the places of its pages in the book
    ``run``     the first and last spread that the scores belong to, as for pages
    """

    spread: int
    pages: tuple[int, ...]
    run: tuple[int, int] | None


@dataclass(frozen=True, slots=True, kw_only=True)
class BookReading(Measures):
    """The measures of the whole story, its pages and its spreads.

    Pages that carry no story (the title, the imprint) are left out; blank pages of the story are in,
    with noughts. ``spreads`` is empty where the spreads are unknown.
    """

    pages: tuple[PageReading, ...]
    spreads: tuple[SpreadReading, ...]


class _Amounts(TypedDict):
    words: int
    sentences: int
    mean_sentence: float
    longest_sentence: int
    syllables_per_word: float
    off_spache: float
    off_dale_chall: float


class _Scores(TypedDict):
    flesch_reading_ease: float | None
    flesch_kincaid_grade: float | None
    spache: float | None
    dale_chall: float | None
    dale_chall_cloze: float | None
    smog: float | None
    coleman_liau: float | None
    ari: float | None
    gunning_fog: float | None


def measure(book: Book, vocabulary: Vocabulary | None = None) -> BookReading:
    """All measures of the book's story; ``vocabulary``, if at hand, saves finding its names again.

    The formulas are made for 100 words and more. A shorter page is given the scores of the smallest
    run of whole pages around it that has 100 words, the one that leaves it nearest to the middle; a
    spread likewise those of a run of spreads; a book of fewer has none.
    """
    names = (use.word for use in (vocabulary or vocabulary_of(book)).names)
    counter = Counter(names=frozenset(names))
    pages = book.story_pages
    counts = [counter.count(page.prose) for page in pages]
    whole = total(counts)
    return BookReading(
        pages=tuple(_page_readings(pages, counts)),
        spreads=tuple(_spread_readings(book, pages, counts)),
        **_amounts(whole),
        **_scores(whole),
    )


def _page_readings(pages: Sequence[Page], counts: Sequence[Counts]) -> list[PageReading]:
    return [
        PageReading(
            page=pages[at].number,
            run=None if first == last else (pages[first].number, pages[last].number),
            **_amounts(counts[at]),
            **_scores(total(counts[first : last + 1])),
        )
        for at, (first, last) in enumerate(_runs(counts))
    ]


def _spread_readings(
    book: Book, pages: Sequence[Page], counts: Sequence[Counts]
) -> list[SpreadReading]:
    on_each = [
        [at for at, page in enumerate(pages) if page.spread == spread] for spread in book.spreads
    ]
    sums = [total(counts[at] for at in on_it) for on_it in on_each]
    return [
        SpreadReading(
            spread=book.spreads[at],
            pages=tuple(pages[page].number for page in on_each[at]),
            run=None if first == last else (book.spreads[first], book.spreads[last]),
            **_amounts(sums[at]),
            **_scores(total(sums[first : last + 1])),
        )
        for at, (first, last) in enumerate(_runs(sums))
    ]


def _amounts(counts: Counts) -> _Amounts:
    words, sentences = max(1, counts.words), max(1, counts.sentences)
    return _Amounts(
        words=counts.words,
        sentences=counts.sentences,
        mean_sentence=counts.words / sentences,
        longest_sentence=counts.longest,
        syllables_per_word=counts.syllables / words,
        off_spache=100 * counts.off_spache / words,
        off_dale_chall=100 * counts.off_dale_chall / words,
    )


def _scores(counts: Counts) -> _Scores:
    if counts.words < SMALLEST_SAMPLE:
        return _Scores(
            flesch_reading_ease=None,
            flesch_kincaid_grade=None,
            spache=None,
            dale_chall=None,
            dale_chall_cloze=None,
            smog=None,
            coleman_liau=None,
            ari=None,
            gunning_fog=None,
        )
    words, sentences, off = counts.words, counts.sentences, counts.off_dale_chall
    return _Scores(
        flesch_reading_ease=flesch_reading_ease(
            words=words, sentences=sentences, syllables=counts.syllables
        ),
        flesch_kincaid_grade=flesch_kincaid_grade(
            words=words, sentences=sentences, syllables=counts.syllables
        ),
        spache=spache_grade(words=words, sentences=sentences, unfamiliar=len(counts.unfamiliar)),
        dale_chall=dale_chall_score(words=words, sentences=sentences, unfamiliar=off),
        dale_chall_cloze=dale_chall_cloze(words=words, sentences=sentences, unfamiliar=off),
        smog=_smog(counts),
        coleman_liau=coleman_liau_grade(words=words, sentences=sentences, letters=counts.letters),
        ari=automated_readability_index(
            words=words, sentences=sentences, characters=counts.characters
        ),
        gunning_fog=gunning_fog_index(
            words=words, sentences=sentences, complex_words=counts.complex_words
        ),
    )


def _smog(counts: Counts) -> float | None:
    if counts.sentences < SMALLEST_SMOG_SAMPLE:
        return None
    return smog_grade(sentences=counts.sentences, polysyllables=counts.polysyllables)


def _runs(counts: Sequence[Counts]) -> list[tuple[int, int]]:
    """For each page or spread, the places of the first and last of the run that scores it."""
    so_far = [0, *accumulate(each.words for each in counts)]
    return [_run(so_far, at) if each.words else (at, at) for at, each in enumerate(counts)]


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
