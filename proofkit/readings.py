"""From a manuscript to how it reads: read, measure, and hold it beside its age band.

What was found out about a book is remembered by its text, its settings and proofkit's own edition.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

import msgspec

from proofkit.book import Book
from proofkit.engines.memory import Memory
from proofkit.opening import digest, read_once
from proofkit.problem import Unusable
from proofkit.progress import Progress, silent
from proofkit.reading.bands import band_named
from proofkit.reading.measure import BookReading, measure
from proofkit.reading_report import ReadingReport, reading_report_of
from proofkit.rulings.decisions import decided_for
from proofkit.settings import Choices, English, Settings
from proofkit.words.english import english_of
from proofkit.words.vocabulary import vocabulary_of

_KIND = "reading"


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadOutcome:
    """What became of one manuscript: a report, or the sentence that says why there is none."""

    path: Path
    report: ReadingReport | None = None
    problem: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class _Found:
    """What is remembered of one book."""

    english: English
    reading: BookReading


def readings(
    paths: Sequence[Path], asked: Choices, *, memory: Memory, progress: Progress = silent
) -> Iterator[ReadOutcome]:
    """How every manuscript reads, in order; one that can't be read stops no other."""
    for done, path in enumerate(paths):
        progress("Reading", done, len(paths))
        try:
            yield ReadOutcome(path=path, report=_report(path, asked, memory))
        except Unusable as problem:
            yield ReadOutcome(path=path, problem=str(problem))


def _report(path: Path, asked: Choices, memory: Memory) -> ReadingReport:
    settings = decided_for(path, asked).settings
    band_named(settings.age_band)
    book = read_once(path, memory)
    found = _found(book, settings, memory)
    return reading_report_of(
        replace(book, title=settings.title or book.title),
        found.reading,
        english=found.english,
        age_band=settings.age_band,
        words_a_minute=settings.words_a_minute,
    )


def _found(book: Book, settings: Settings, memory: Memory) -> _Found:
    key = digest(_KIND, book, settings.english, settings.age_band)
    kept = memory.recall(_KIND, key)
    if kept:
        try:
            return msgspec.msgpack.decode(kept, type=_Found)
        except msgspec.DecodeError:
            pass  # damaged on the disk: found anew
    vocabulary = vocabulary_of(book)
    found = _Found(
        english=settings.english or english_of(book, vocabulary),
        reading=measure(book, vocabulary),
    )
    memory.remember(_KIND, key, msgspec.msgpack.encode(found))
    return found
