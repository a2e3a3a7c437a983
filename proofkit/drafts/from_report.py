"""A draft made from the report of a checked manuscript."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from datetime import datetime

import msgspec

import proofkit
from proofkit.drafts.draft import (
    Draft,
    DraftIssue,
    DraftMeasures,
    DraftPage,
    DraftRuling,
    SpreadWords,
    Versions,
    digest_of,
    text_digest,
)
from proofkit.report import LetStand, PageReport, RankedIssue, Report
from proofkit.rulings.ruling import Ruling
from proofkit.settings import USUAL_PACE, Settings


def draft_of(
    report: Report,
    *,
    date: datetime,
    settings: Settings,
    rulings: Iterable[Ruling] = (),
    edition: str = "",
) -> Draft:
    """The draft that a report is about, not yet numbered.

    ``settings`` are those that it was checked with. ``edition`` tells the checks that were made from
    those of another proofkit; by itself only the version does. ``date`` has a time zone, else ValueError.
    """
    if date.tzinfo is None:
        raise ValueError("a draft's date needs its time zone")
    pages = tuple(map(_page, report.pages))
    open_ = (_issue(issue) for issue in report.issues)
    versions = Versions(
        proofkit=proofkit.__version__,
        engines=tuple(sorted((engine.name, engine.version) for engine in report.engines)),
    )
    return Draft(
        date=date,
        file=report.manuscript.path,
        title=report.manuscript.title,
        pages=pages,
        issues=(*open_, *map(_let_stand, report.let_stand)),
        measures=_measures(report),
        rulings=tuple(map(_ruling, rulings)),
        versions=versions,
        text_digest=text_digest(pages),
        asked_digest=_asked_digest(report, settings, versions.proofkit, edition),
        complete=report.complete,
    )


def _asked_digest(report: Report, settings: Settings, version: str, edition: str) -> str:
    # The title, the companions, the pace and the server's address change nothing that is found.
    asked = replace(
        settings,
        title="",
        series=(),
        words_a_minute=USUAL_PACE,
        grammar_server=None,
        english=report.manuscript.english,
    )
    return digest_of([msgspec.to_builtins(asked), version, edition])


def _page(page: PageReport) -> DraftPage:
    return DraftPage(
        number=page.number,
        label=page.label,
        spread=page.spread,
        role=page.role,
        words=page.words,
        text=page.text,
    )


def _issue(issue: RankedIssue) -> DraftIssue:
    return DraftIssue(
        key=issue.key,
        check=issue.check,
        tier=issue.tier,
        page=issue.page,
        start=issue.start,
        end=issue.end,
        quote=issue.quote,
        message=issue.message,
        confidence=issue.confidence,
        related=issue.related,
    )


def _let_stand(stet: LetStand) -> DraftIssue:
    return replace(_issue(stet.issue), let_stand=True, because=stet.because)


def _measures(report: Report) -> DraftMeasures:
    return DraftMeasures(
        words=report.manuscript.words,
        pages=report.manuscript.pages,
        spreads=report.manuscript.spreads,
        errors=len(report.errors),
        queries=len(report.queries),
        let_stand=len(report.let_stand),
        grade=report.reading.flesch_kincaid_grade,
        spread_words=tuple(_spread_words(report)),
    )


def _spread_words(report: Report) -> Iterator[SpreadWords]:
    for spread in report.reading.spreads:
        yield SpreadWords(spread=spread.spread, words=spread.words)


def _ruling(ruling: Ruling) -> DraftRuling:
    return DraftRuling(key=ruling.key, check=ruling.check, word=ruling.word, because=ruling.because)
