"""A sentence far longer than any in books for its age.

What it finds
    A sentence at least a quarter longer than the longest that books of its age band have: in a picture
    book, one of 50 words or more. All such sentences of a book are one issue, at the longest.

Why a reader minds
    Whoever reads aloud runs out of breath, and whoever listens has lost the beginning by the end.
    Often a full stop is merely missing.

Example
    The goose flew over the mill and she looked for the key and … and she never once looked down. (62 words)

Better
    The goose flew over the mill. She looked for the key. … She never once looked down.

When to let it stand
    The breathless sentence is an old joke and a good one, and a heap of and's is a child's own way of
    telling. A sentence that grows by repeating itself, as in a cumulative tale, and one set in lines of
    verse, are not judged; nor is a manuscript that is far too long as a whole.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from proofkit.analysis import Analysis
from proofkit.book import Book, Page, count_words
from proofkit.checks.check import Need
from proofkit.checks.reading._amount import far_longer, opening
from proofkit.issue import Issue, Tier, issue_at
from proofkit.reading.bands import band_named
from proofkit.reading.sentences import sentences
from proofkit.settings import Settings
from proofkit.words.vocabulary import WORD

NAME = "reading/long-sentence"
NEEDS = frozenset({Need.TEXT})
_CONFIDENCE = 0.4
_FAR_ABOVE = 1.25
_VERSE_BREAKS = 2  # line breaks that the author set inside one sentence
_MOSTLY_NEW = 2 / 3

_Triple = tuple[str, str, str]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Told:
    """One sentence: how many words, and which share of its turns of phrase is new in the book."""

    page: Page
    start: int
    words: int
    breaks: int
    new: float


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue, at the first words of the longest sentence."""
    band = band_named(settings.age_band)
    if far_longer(book, band):
        return
    limit = _FAR_ABOVE * band.longest_sentence.most
    long = sorted(
        (told for told in _told(book) if told.words >= limit and _is_plain(told)),
        key=lambda told: -told.words,
    )
    if long:
        places = [opening(told.page, told.start) for told in long]
        yield issue_at(
            book,
            places[0],
            check=NAME,
            tier=Tier.QUERY,
            message=f"a sentence of {long[0].words} words: is there a place for a full stop?",
            confidence=_CONFIDENCE,
            related=sorted(places[1:]),
        )


def _told(book: Book) -> Iterator[_Told]:
    heard: set[_Triple] = set()
    for page in book.story_pages:
        prose = page.prose
        for start, end in sentences(prose):
            text = prose[start:end]
            triples = _triples(text)
            yield _Told(
                page=page,
                start=start,
                words=count_words(text),
                breaks=text.count("\n"),
                new=len(set(triples) - heard) / max(1, len(triples)),
            )
            heard.update(triples)


def _triples(text: str) -> list[_Triple]:
    words = [word.lower() for word in WORD.findall(text)]
    return list(zip(words, words[1:], words[2:], strict=False))


def _is_plain(told: _Told) -> bool:
    return told.breaks < _VERSE_BREAKS and told.new >= _MOSTLY_NEW
