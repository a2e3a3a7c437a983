"""One name in two spellings, in two books of a series.

What it finds
    A name that each of two manuscripts of a series has in a spelling of its own: Nozibele in the first,
    Nozibelle in the second. Also a name with an accent, or a capital inside it, in one of them only.

Why a reader minds
    The child who knows the first book by heart sees it at once.

Example
    Book one: Nozibele went home. Book two: Nozibelle went to sea.

Better
    Book one: Nozibele went home. Book two: Nozibele went to sea.

When to let it stand
    When they are two people. To keep one spelling in all books, add the name to your style sheet.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations
from pathlib import PurePath

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.consistency._name_pairs import is_known, may_be_one_name
from proofkit.checks.counting import times
from proofkit.habits.names import names_of
from proofkit.issue import Issue, Tier, issue_at
from proofkit.words.alike import same_but_for_accents, sounds_alike
from proofkit.words.dictionary import Dictionary, dictionary
from proofkit.words.titles import TITLES

NAME = "consistency/name-across-series"


@dataclass(frozen=True, slots=True, kw_only=True)
class Volume:
    """One book of a series, in the order of the series."""

    book: Book
    analysis: Analysis


@dataclass(frozen=True, slots=True, kw_only=True)
class _Name:
    """A word of a name in one volume, as written there; ``volume`` counts from 0."""

    word: str
    volume: int
    spans: tuple[Span, ...]


def names_across(volumes: Sequence[Volume]) -> tuple[tuple[Issue, ...], ...]:
    """For each volume, in order, the names that another volume spells otherwise.

    The issue stands in the volume that has the name less often; of two as often, in the later one.
    Names that stand in one volume in both spellings are that volume's own matter.
    """
    names = [
        _Name(word=word, volume=number, spans=spans)
        for number, volume in enumerate(volumes)
        for word, spans in _words(volume).items()
    ]
    issues: list[list[Issue]] = [[] for _ in volumes]
    for one, other in _pairs(names, volumes):
        odd, usual = sorted((one, other), key=lambda name: (len(name.spans), -name.volume))
        confidence = _likelihood(odd.word, usual.word, volumes[odd.volume].analysis)
        if confidence:
            issues[odd.volume].append(_issue(volumes, odd, usual, confidence))
    return tuple(tuple(sorted(own, key=lambda issue: issue.span)) for own in issues)


def _words(volume: Volume) -> Mapping[str, tuple[Span, ...]]:
    """The words that the names of a volume are made of, titles left out, with their places."""
    words: dict[str, list[Span]] = defaultdict(list)
    for named in names_of(volume.book, volume.analysis):
        for span in named.spans:
            text = volume.book.quote(span)
            at = 0
            for word in text.split():
                start = text.index(word, at)
                at = start + len(word)
                if word[0].isupper() and word.lower().strip(".") not in TITLES:
                    words[word].append(_part(span, start, at))
    return {word: tuple(spans) for word, spans in words.items()}


def _part(span: Span, start: int, end: int) -> Span:
    return Span(page=span.page, start=span.start + start, end=span.start + end)


def _pairs(names: Sequence[_Name], volumes: Sequence[Volume]) -> Iterator[tuple[_Name, _Name]]:
    """Names of two volumes that differ a little, and that neither volume has both of."""
    for one, other in combinations(names, 2):
        if one.volume == other.volume or one.word == other.word:
            continue
        capitals = one.word.lower() == other.word.lower()
        if not capitals and not may_be_one_name(one.word.lower(), other.word.lower()):
            continue
        if capitals or not (_has(volumes[one.volume], other) or _has(volumes[other.volume], one)):
            yield one, other


def _has(volume: Volume, name: _Name) -> bool:
    return volume.analysis.vocabulary.count(name.word) > 0


def _likelihood(odd: str, usual: str, analysis: Analysis) -> float:
    if odd.lower() == usual.lower() or same_but_for_accents(odd.lower(), usual.lower()):
        return 0.8
    words: Dictionary = dictionary(analysis.english)
    if is_known(odd, words) and is_known(usual, words):
        return 0.4 if sounds_alike(odd.lower(), usual.lower()) else 0.0
    return 0.65


def _issue(volumes: Sequence[Volume], odd: _Name, usual: _Name, confidence: float) -> Issue:
    book = PurePath(volumes[usual.volume].book.path).name
    return issue_at(
        volumes[odd.volume].book,
        odd.spans[0],
        check=NAME,
        tier=Tier.QUERY,
        message=f"in {book} the name is {usual.word} ({times(len(usual.spans))})",
        suggestions=(usual.word,),
        confidence=confidence,
        related=odd.spans[1:],
    )
