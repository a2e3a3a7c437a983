"""From a manuscript to how it reads: read, measure, and hold it beside its age band.

What was found out about a book is remembered by its text, its settings and proofkit's own edition.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

import msgspec

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.engines.memory import Memory
from proofkit.opening import digest, read_once
from proofkit.problem import Notice, Unusable
from proofkit.progress import Progress, silent
from proofkit.reading.bands import band_named
from proofkit.reading.measure import BookReading, measure
from proofkit.reading.phonics import Decodable, decodable, phase_for
from proofkit.reading.rhythm.find import rhythm_of
from proofkit.reading.rhythm.place import RhythmPlace
from proofkit.reading.verse.find import verse_of
from proofkit.reading.verse.poem import Verse
from proofkit.reading.words_beyond import HardWord, words_beyond
from proofkit.reading_report import ReadingReport, reading_report_of
from proofkit.rulings.decisions import decided_for
from proofkit.settings import Choices, English, Settings
from proofkit.words.english import english_for

_KIND = "reading"


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadOutcome:
    """What became of one manuscript: a report, or the sentence that says why there is none.

    ``complete`` is false where something could not be looked at; the report's remarks say what.
    """

    path: Path
    report: ReadingReport | None = None
    problem: str | None = None
    complete: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class _Found:
    """What is remembered of one book."""

    english: English
    reading: BookReading
    words_beyond: tuple[HardWord, ...]
    phonics: Decodable | None
    rhythm: tuple[RhythmPlace, ...]
    verse: Verse | None


@dataclass(frozen=True, slots=True, kw_only=True)
class _Task:
    book: Book
    settings: Settings
    key: bytes


def readings(
    paths: Sequence[Path], asked: Choices, *, memory: Memory, progress: Progress = silent
) -> Iterator[ReadOutcome]:
    """How every manuscript reads, in order; the language model is loaded once, and only if one is new."""
    tasks = [_task(path, asked, memory) for path in paths]
    readable = [task for task in tasks if isinstance(task, _Task)]
    kept = memory.recall_many(_KIND, [task.key for task in readable])
    found = {key: one for key, value in kept.items() if (one := _remembered(value))}
    new = [task for task in readable if task.key not in found]
    notices: tuple[Notice, ...] = ()
    if new:
        fresh, notices = _found(new, memory, progress)
        found |= fresh
    for path, task in zip(paths, tasks, strict=True):
        if isinstance(task, _Task):
            about = notices if task in new else ()
            yield ReadOutcome(
                path=path,
                report=_report(task, found[task.key], about),
                complete=not any(notice.unchecked for notice in about),
            )
        else:
            yield ReadOutcome(path=path, problem=task)


def _task(path: Path, asked: Choices, memory: Memory) -> _Task | str:
    try:
        settings = decided_for(path, asked).settings
        band_named(settings.age_band)
        book = read_once(path, memory)
    except Unusable as problem:
        return str(problem)
    key = digest(_KIND, book, settings.english, settings.age_band)
    return _Task(book=book, settings=settings, key=key)


def _remembered(value: bytes) -> _Found | None:
    try:
        return msgspec.msgpack.decode(value, type=_Found)
    except msgspec.DecodeError:
        return None  # damaged on the disk: found anew


def _found(
    tasks: Sequence[_Task], memory: Memory, progress: Progress
) -> tuple[dict[bytes, _Found], tuple[Notice, ...]]:
    # Only now: what is remembered needs no engine, and need not wait for its libraries.
    from proofkit.engines.analyse import Analyst  # noqa: PLC0415

    books = [(task.book, english_for(task.book, task.settings.english)) for task in tasks]
    with Analyst(memory=memory, progress=progress) as analyst:
        analyses = analyst.analyse(books, language_model=True, grammar_engine=False)
        notices = analyst.notices
    found = {
        task.key: _measured(task, analysis) for task, analysis in zip(tasks, analyses, strict=True)
    }
    if not notices:
        encoded = {key: msgspec.msgpack.encode(one) for key, one in found.items()}
        memory.remember_many(_KIND, encoded)
    return found, notices


def _measured(task: _Task, analysis: Analysis) -> _Found:
    book, band = task.book, band_named(task.settings.age_band)
    phase = phase_for(band)
    return _Found(
        english=analysis.english,
        reading=measure(book, analysis.vocabulary),
        words_beyond=words_beyond(book, analysis, band),
        phonics=decodable(book, phase) if phase else None,
        rhythm=rhythm_of(book, analysis),
        verse=verse_of(book, analysis.english),
    )


def _report(task: _Task, found: _Found, notices: Sequence[Notice]) -> ReadingReport:
    settings = task.settings
    return reading_report_of(
        replace(task.book, title=settings.title or task.book.title),
        found.reading,
        english=found.english,
        age_band=settings.age_band,
        words_a_minute=settings.words_a_minute,
        words_beyond=found.words_beyond,
        phonics=found.phonics,
        rhythm=found.rhythm,
        verse=found.verse,
        remarks=[notice.text for notice in notices],
    )
