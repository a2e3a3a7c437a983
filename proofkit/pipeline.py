"""The loop, on one screen: read, analyse, check, rule, rank.

What was found in a manuscript is remembered by its text, its settings and proofkit's own edition, so
that a manuscript that did not change is reported again without starting an engine.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

import msgspec

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Check, Need
from proofkit.checks.registry import all_checks
from proofkit.checks.run import found_by
from proofkit.engines.address import checked_address
from proofkit.engines.memory import Memory
from proofkit.engines.note import EngineNote
from proofkit.issue import Issue, with_keys
from proofkit.opening import digest, read_once
from proofkit.problem import Notice, Unusable
from proofkit.progress import Progress, silent
from proofkit.ranking import asked_where_unsure, one_measure_a_spread, ranked, without_rivals
from proofkit.reading.bands import band_named
from proofkit.reading.measure import BookReading, measure
from proofkit.report import Report, report_of
from proofkit.rulings.decisions import decided_for
from proofkit.rulings.judging import Judgement, judged
from proofkit.rulings.own_words import is_settled, still_idle, unsettled
from proofkit.rulings.ruling import Ruling, idle_sentence
from proofkit.series import Member, companions, not_agreeing
from proofkit.settings import USUAL_PACE, Choices, English, Settings
from proofkit.track_record import tempered
from proofkit.words.confirm import WordToConfirm, words_to_confirm
from proofkit.words.dictionary import dictionary
from proofkit.words.english import english_for
from proofkit.words.suggest import make_ready

if TYPE_CHECKING:
    from proofkit.engines.analyse import Analyst

_KIND = "findings"


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """What became of one manuscript: a report, or the sentence that says why there is none.

    ``book`` is the manuscript as read, and ``issues`` all that was found in it, let stand or not;
    ``settings`` and ``rulings`` are those that it was checked with.
    """

    path: Path
    report: Report | None = None
    problem: str | None = None
    book: Book | None = None
    issues: tuple[Issue, ...] = ()
    settings: Settings | None = None
    rulings: tuple[Ruling, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Findings:
    """All that was found in one manuscript, before it is ranked."""

    english: English
    issues: tuple[Issue, ...]
    words_to_confirm: tuple[WordToConfirm, ...]
    reading: BookReading
    engines: tuple[EngineNote, ...]
    notices: tuple[Notice, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class _Task:
    book: Book
    settings: Settings
    rulings: tuple[Ruling, ...]
    key: bytes


def check_manuscripts(
    paths: Sequence[Path], asked: Choices, *, memory: Memory, progress: Progress = silent
) -> Iterator[Outcome]:
    """Check every manuscript, in order; the engines start once, and only if something is new.

    Raises Unusable only where the choices themselves can't be used.
    """
    tasks = [_task(path, asked, memory) for path in paths]
    readable = [task for task in tasks if isinstance(task, _Task)]
    kept = memory.recall_many(_KIND, [task.key for task in readable])
    found = {key: findings for key, value in kept.items() if (findings := _remembered(value))}
    new = [task for task in readable if task.key not in found]
    if new:
        found |= _found(new, memory, progress)
    for path, task in zip(paths, tasks, strict=True):
        if isinstance(task, _Task):
            others = companions(path, task.settings.series, paths)
            own = found[task.key]
            if others:
                member = Member(path=path, book=task.book, settings=task.settings)
                across = not_agreeing(member, others, asked, memory=memory, progress=progress)
                own = _with_more(task, own, across)
            yield Outcome(
                path=path,
                report=_report(task, own),
                book=task.book,
                issues=own.issues,
                settings=task.settings,
                rulings=task.rulings,
            )
        else:
            yield Outcome(path=path, problem=task)


def _task(path: Path, asked: Choices, memory: Memory) -> _Task | str:
    try:
        decided = decided_for(path, asked)
        settings = decided.settings
        band_named(settings.age_band)
        if settings.grammar_server:
            checked_address(settings.grammar_server)
        book = read_once(path, memory)
    except Unusable as problem:
        return str(problem)
    # A ruling, the title, the companions and the pace change nothing that a check finds in the book.
    asking = replace(settings, title="", series=(), words_a_minute=USUAL_PACE)
    return _Task(book=book, settings=settings, rulings=decided.rulings, key=digest(book, asking))


def _remembered(value: bytes) -> Findings | None:
    try:
        findings = msgspec.msgpack.decode(value, type=Findings)
    except msgspec.DecodeError:
        return None  # damaged on the disk: found anew
    resting = (replace(engine, ran=False, note="remembered") for engine in findings.engines)
    return replace(findings, engines=tuple(resting))


def _found(tasks: Sequence[_Task], memory: Memory, progress: Progress) -> dict[bytes, Findings]:
    # Only now: what is remembered needs no engine, and need not wait for their libraries.
    from proofkit.engines.analyse import Analyst  # noqa: PLC0415

    server = next((t.settings.grammar_server for t in tasks if t.settings.grammar_server), None)
    books = [(task.book, english_for(task.book, task.settings.english)) for task in tasks]
    findings = {}
    with Analyst(memory=memory, grammar_server=server, progress=progress) as analyst:
        # Java takes longest, and there is no set of checks without grammar in it: it goes first.
        analyst.ask(books)
        checks = all_checks()
        _open_word_lists({english for _, english in books})
        needs = {need for check in checks for need in check.needs}
        analyses = analyst.analyse(
            books,
            language_model=Need.LANGUAGE_MODEL in needs,
            grammar_engine=Need.GRAMMAR_ENGINE in needs,
        )
        for task, analysis in zip(tasks, analyses, strict=True):
            findings[task.key] = _examine(task, analysis, checks, analyst)
    for key, found in findings.items():
        if not any(notice.unchecked for notice in found.notices):
            memory.remember(_KIND, key, msgspec.msgpack.encode(found))
    return findings


def _open_word_lists(englishes: Iterable[English]) -> None:
    """Load what the checks look words up in, while Java is starting and there is nothing else to do."""
    for english in englishes:
        make_ready(dictionary(english))


def _examine(
    task: _Task, analysis: Analysis, checks: Sequence[Check], analyst: Analyst
) -> Findings:
    issues, failures = found_by(checks, task.book, analysis, task.settings)
    asked = [issue for issue in issues if not is_settled(issue, task.settings.style)]
    kept = asked_where_unsure(one_measure_a_spread(task.book, without_rivals(tempered(asked))))
    return Findings(
        english=analysis.english,
        issues=with_keys(task.book, kept),
        words_to_confirm=words_to_confirm(
            task.book,
            analysis.vocabulary,
            dictionary(analysis.english),
            raised=[issue.span for issue in kept],
        ),
        reading=measure(task.book, analysis.vocabulary),
        engines=analyst.engines,
        notices=(*analyst.notices, *failures),
    )


def _with_more(task: _Task, found: Findings, more: Sequence[Issue]) -> Findings:
    """The findings, and of ``more`` what has places of its own and was not decided."""
    fresh = [issue for issue in more if not is_settled(issue, task.settings.style)]
    kept = without_rivals((*found.issues, *asked_where_unsure(tempered(fresh))))
    return replace(found, issues=with_keys(task.book, kept))


def _report(task: _Task, found: Findings) -> Report:
    ruled = judged(task.book, ranked(task.book, found.issues), task.rulings)
    title = task.settings.title or task.book.title
    return report_of(
        replace(task.book, title=title),
        ruled.open,
        let_stand=((each.issue, each.ruling.because) for each in ruled.let_stand),
        english=found.english,
        age_band=task.settings.age_band,
        words_to_confirm=unsettled(found.words_to_confirm, task.settings.style, task.rulings),
        reading=found.reading,
        engines=found.engines,
        notices=(*found.notices, *_idle(ruled, found)),
    )


def _idle(ruled: Judgement, found: Findings) -> Iterator[Notice]:
    """A line about the rulings that match nothing, unless what they are about may not have been checked."""
    idle = still_idle(ruled.idle, found.words_to_confirm)
    if idle and not any(notice.unchecked for notice in found.notices):
        yield Notice(text=idle_sentence(idle))
