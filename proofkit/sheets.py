"""From a manuscript to its style sheet: read, analyse, check, and write down what the book does."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from pathlib import Path

from proofkit.book import Span
from proofkit.checks.check import Need
from proofkit.checks.registry import all_checks
from proofkit.checks.run import found_by
from proofkit.engines.analyse import Analyst
from proofkit.engines.memory import Memory
from proofkit.issue import with_keys
from proofkit.opening import read_once
from proofkit.problem import Notice
from proofkit.progress import Progress, silent
from proofkit.ranking import asked_where_unsure, without_rivals
from proofkit.rulings.decisions import decided_for
from proofkit.rulings.judging import Judgement, judged
from proofkit.rulings.ruling import Ruling
from proofkit.settings import Choices
from proofkit.stylesheet.ground import ground_of
from proofkit.stylesheet.make import style_sheet_of
from proofkit.stylesheet.sheet import StyleSheet
from proofkit.track_record import tempered
from proofkit.words.english import english_for
from proofkit.words.vocabulary import WORD

# What these find is a slip in a name or a word, or something that the book can't agree on.
_FAMILIES = ("capitals", "consistency", "english", "marks", "spelling")
_ABOUT_A_WORD = ("spelling/", "english/")
_ABOUT_AGREEMENT = ("consistency/", "english/")


def style_sheet(
    path: Path, *, memory: Memory, made: date, progress: Progress = silent
) -> StyleSheet:
    """The style sheet of one manuscript, as it stands on the day ``made``.

    The grammar engine is not needed for it. If the language model fails, the sheet lacks what needs
    it, and its notices say so. Raises Unusable if the manuscript or its settings can't be used.
    """
    decided = decided_for(path, Choices())
    settings, rulings = decided.settings, decided.rulings
    book = read_once(path, memory)
    english = english_for(book, settings.english)
    with Analyst(memory=memory, progress=progress) as analyst:
        [analysis] = analyst.analyse([(book, english)], language_model=True, grammar_engine=False)
        notices = [*(Notice(text=remark) for remark in book.remarks), *analyst.notices]
    checks = [
        check
        for check in all_checks()
        if check.family in _FAMILIES and Need.GRAMMAR_ENGINE not in check.needs
    ]
    issues, failures = found_by(checks, book, analysis, settings)
    notices += failures
    found = without_rivals(tempered(issues))
    ruled = judged(book, with_keys(book, asked_where_unsure(found)), rulings)
    ground = ground_of(
        book,
        analysis,
        settings,
        issues=ruled.open,
        let_stand=_words_let_stand(ruled, rulings),
        settled=_settled(ruled),
    )
    return style_sheet_of(ground, made=made, notices=notices)


def _words_let_stand(ruled: Judgement, rulings: Sequence[Ruling]) -> Mapping[str, str]:
    """The words that the author let stand, by name or at a place where their spelling was asked about."""
    by_name = {ruling.word: ruling.because for ruling in rulings if ruling.word}
    at_places = {
        each.issue.quote: each.ruling.because
        for each in ruled.let_stand
        if each.issue.check.startswith(_ABOUT_A_WORD) and WORD.fullmatch(each.issue.quote)
    }
    return at_places | by_name


def _settled(ruled: Judgement) -> Iterator[Span]:
    """The places where the author let stand what the book has otherwise elsewhere."""
    for each in ruled.let_stand:
        if each.issue.check.startswith(_ABOUT_AGREEMENT):
            yield from (each.issue.span, *each.issue.related)
