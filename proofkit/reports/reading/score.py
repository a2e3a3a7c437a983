"""The book's shape as a score: three staves with a column for every spread.

The staves are words, longest sentence and grade. Each column is a link to its spread's text and carries
its figures as type, so that nothing is told by the drawing alone.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from proofkit.reading.bands import AgeBand, Figure, Place, band_named
from proofkit.reading_report import ReadingReport, ReadSpread
from proofkit.reports.html.charts import Bar, Line, bars, level, line, share
from proofkit.reports.reading.setting import run_name, step_name, unit

_HEADROOM = 1.2  # for the figure above the tallest bar
_ALL_ABOVE = (Place.ABOVE, Place.WELL_ABOVE)


@dataclass(frozen=True, slots=True, kw_only=True)
class BarStave:
    """Bars over a field that shows what is usual, and a line at the most; both as y."""

    bars: tuple[Bar, ...]
    usual: float
    most: float
    figure: Figure
    top: float


@dataclass(frozen=True, slots=True, kw_only=True)
class GradeStave:
    """The grade of each spread's run; ``bottom`` to ``top`` is its scale."""

    line: Line
    bottom: float
    top: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """The figures of one spread, how high each stands on its stave (in hundredths), and its name.

    ``number`` is short, for the foot of the column: "6", "p. 1". ``heavy`` and ``long`` say which of its
    figures are above the usual, ``work`` whether there is a reason to work on it.
    """

    number: str
    name: str
    words: int
    words_at: float
    heavy: bool
    sentence: int
    sentence_at: float
    long: bool
    grade: str
    grade_at: float
    work: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Score:
    """All of it; ``grade`` is None where no spread has one."""

    unit: str
    band: AgeBand
    words: BarStave
    sentences: BarStave
    grade: GradeStave | None
    columns: tuple[Column, ...]


def score_of(report: ReadingReport) -> Score | None:
    """The book's score; None where no pages are marked."""
    if not any(step.measures.words for step in report.steps):
        return None
    band, steps = band_named(report.age_band), report.steps
    words = _bar_stave([step.measures.words for step in steps], band.spread_words)
    sentences = _bar_stave(
        [step.measures.longest_sentence for step in steps], band.longest_sentence
    )
    grade = _grade_stave([step.measures.flesch_kincaid_grade for step in steps])
    return Score(
        unit=unit(report),
        band=band,
        words=words,
        sentences=sentences,
        grade=grade,
        columns=tuple(_column(report, step, words, sentences, grade) for step in steps),
    )


def _bar_stave(values: Sequence[int], figure: Figure) -> BarStave:
    top = _HEADROOM * max(*values, figure.most)
    return BarStave(
        bars=bars(values, figure.usual, top),
        usual=level(figure.usual, top),
        most=level(figure.most, top),
        figure=figure,
        top=top,
    )


def _grade_stave(grades: Sequence[float | None]) -> GradeStave | None:
    told = [grade for grade in grades if grade is not None]
    if not told:
        return None
    # Two grades at least, so that a book that hardly varies is not drawn as if it did.
    bottom, top = min(told) - 1, max(told) + 1.6
    return GradeStave(line=line(grades, bottom, top), bottom=bottom, top=top)


def _column(
    report: ReadingReport,
    step: ReadSpread,
    words: BarStave,
    sentences: BarStave,
    grade: GradeStave | None,
) -> Column:
    measures, name = step.measures, step_name(report, step)
    graded = measures.flesch_kincaid_grade
    return Column(
        number=_short(step, name, among_spreads=bool(report.spreads)),
        name=name,
        words=measures.words,
        words_at=share(measures.words, 0, words.top),
        heavy=step.places.get("words") in _ALL_ABOVE,
        sentence=measures.longest_sentence,
        sentence_at=share(measures.longest_sentence, 0, sentences.top),
        long=step.places.get("longest_sentence") in _ALL_ABOVE,
        grade="" if graded is None else f"{graded:.1f}",
        grade_at=share(graded, grade.bottom, grade.top) if grade and graded is not None else 0,
        work=bool(step.reasons),
    )


def _short(step: ReadSpread, name: str, *, among_spreads: bool) -> str:
    """The number alone; "p. 1" for a page that lies on no spread, among spreads."""
    if step.spread is not None:
        return str(step.spread)
    number = name.rpartition(" ")[2] if name.startswith("page") else str(step.pages[0])
    return f"p. {number}" if among_spreads else number


def grade_of(step: ReadSpread) -> str:
    """The grade with the run that it belongs to, for a table: "3.1 (4–6)"; "" where there is none."""
    graded = step.measures.flesch_kincaid_grade
    if graded is None:
        return ""
    return f"{graded:.1f} ({run_name(step)})" if step.run else f"{graded:.1f}"
