"""How a book reads, where no terminal shows it: tab-separated, without decoration, nothing cut short."""

from __future__ import annotations

from proofkit.reading.bands import band_named
from proofkit.reading_report import ReadingReport, ReadSpread
from proofkit.reports.reading.language import hard_rows, sentences_on_language
from proofkit.reports.reading.setting import (
    LAST_WORD,
    about,
    extent_sentence,
    for_whom,
    formulas,
    grade_sentences,
    pace_sentences,
    rows,
    run_name,
    step_name,
    title,
    to_work_on,
    unit,
)

_HEADS = ("words", "longest sentence", "grade", "grade of", "seconds aloud")


def as_plain(report: ReadingReport) -> str:
    """The same lines as on a terminal; the rows of its tables have a tab between their cells."""
    lines = [f"{title(report)}: {about(report)}", for_whom(report)]
    lines += [f"Note: {remark}" for remark in report.remarks]
    if to_work_on(report):
        lines += ["", f"{unit(report).capitalize()}s to work on, the gravest first"]
        lines += [
            f"{step_name(report, step)}\t{'; '.join(step.reasons)}" for step in to_work_on(report)
        ]
    if report.steps:
        lines += ["", "\t".join((unit(report), *_HEADS))]
        lines += [_step(report, step) for step in report.steps]
    lines += [*pace_sentences(report), *grade_sentences(report)]
    if hard_rows(report):
        lines += ["", "beyond the age\twhere\tsimpler\twhy"]
        lines += [f"{row.word}\t{row.where}\t{row.simpler}\t{row.why}" for row in hard_rows(report)]
    lines += sentences_on_language(report)
    if rows(report):
        lines += ["", f"the whole\there\t{band_named(report.age_band).plural} usually\t"]
        lines += [f"{row.name}\t{row.here}\t{row.usual}\t{row.place}" for row in rows(report)]
    lines += filter(None, (formulas(report.book), extent_sentence(report), LAST_WORD))
    return "\n".join(lines) + "\n"


def _step(report: ReadingReport, step: ReadSpread) -> str:
    grade = step.measures.flesch_kincaid_grade
    cells = (
        step_name(report, step),
        str(step.measures.words),
        str(step.measures.longest_sentence),
        "" if grade is None else f"{grade:.1f}",
        run_name(step),
        str(step.seconds),
    )
    return "\t".join(cells)
