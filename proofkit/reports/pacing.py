"""How the story is spread over its pages, and how it reads, in figures and in sentences."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import groupby

from proofkit.reading.bands import AgeBand, band_named
from proofkit.reading.formulas import ease_in_words
from proofkit.reading.measure import PageReading
from proofkit.report import Report
from proofkit.reports.phrases import counted, quoted
from proofkit.reports.places import listed, page_name

MEASURES = ("words", "longest sentence", "grade")

_MOST_STEPS = (
    40  # more than a book for reading aloud has; beyond, figures by the page fill the screen
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One spread, or a page that lies on none: what a listener hears before the page turns.

    ``grade`` is the Flesch-Kincaid grade of the run of pages around it, or None where there is none.
    """

    name: str
    words: int
    longest_sentence: int
    grade: float | None


def grade_shown(grade: float | None) -> str:
    """A grade to one decimal; nothing where there is none."""
    return "" if grade is None else f"{grade:.1f}"


def unit(report: Report) -> str:
    """What a step is called: "spread" or "page"."""
    return "spread" if report.reading.spreads else "page"


def steps(report: Report) -> tuple[Step, ...]:
    """The story's steps in order; none where no pages are marked, or too many to be taken in."""
    if not report.manuscript.paginated:
        return ()
    by_step = groupby(report.reading.pages, key=lambda page: _place(report, page))
    found = tuple(_step(report, list(pages)) for _place_, pages in by_step)
    return found if len(found) <= _MOST_STEPS else ()


def sentences_on_reading(report: Report) -> list[str]:
    """How the whole book reads, and where it leaves what is usual for its age band."""
    lines = [_whole(report)]
    if not report.manuscript.paginated:
        lines.append("No pages are marked, so words on a page or spread were not counted.")
        return lines
    if steps(report) and any(page.run for page in report.reading.pages):
        lines.append(
            f"A {unit(report)} of fewer than 100 words has no grade of its own: it is given that of the "
            "pages around it."
        )
    lines.append(_beside_band(report, band_named(report.manuscript.age_band)))
    lines.append(f"More, and what to work on: proofkit reading {quoted(report.manuscript.path)}")
    return [line for line in lines if line]


def _whole(report: Report) -> str:
    reading = report.reading
    line = (
        f"The whole: {counted(reading.words, 'word')} in {counted(reading.sentences, 'sentence')}, "
        f"{reading.mean_sentence:.1f} words each, the longest {reading.longest_sentence}"
    )
    if reading.flesch_reading_ease is None or reading.flesch_kincaid_grade is None:
        return f"{line}; too few words for a readability score"
    return (
        f"{line}; Flesch-Kincaid grade {reading.flesch_kincaid_grade:.1f} (American school years), "
        f"reading ease {reading.flesch_reading_ease:.0f} ({ease_in_words(reading.flesch_reading_ease)})"
    )


def _beside_band(report: Report, band: AgeBand) -> str:
    """The book's steps beside what its age band is used to."""
    if not report.reading.spreads:
        return ""
    figure = band.spread_words
    few = f"{figure.least} to" if figure.least else "up to"
    usual = f"{band.plural.capitalize()} usually have {few} {figure.usual} words on a spread"
    heavy = [
        step
        for step in steps(report)
        if step.words > figure.usual and not step.name.startswith("p. ")
    ]
    if not heavy:
        return usual
    named = listed([f"{step.name} ({step.words})" for step in heavy])
    return f"{usual}; here spread{'s' if len(heavy) > 1 else ''} {named} {'have' if len(heavy) > 1 else 'has'} more"


def _place(report: Report, page: PageReading) -> tuple[int | None, int]:
    """Equal for the pages of one spread; a page that lies on none is alone."""
    spread = report.pages[page.page - 1].spread
    return (spread, 0) if spread else (None, page.page)


def _step(report: Report, pages: Sequence[PageReading]) -> Step:
    """A step's figures; a spread's grade is its own or its run's, as ``proofkit reading`` has it."""
    number = report.pages[pages[0].page - 1].spread
    spreads = (each for each in report.reading.spreads if each.spread == number)
    graded = next(spreads, None) or pages[0]
    return Step(
        name=_name(report, pages[0]),
        words=sum(page.words for page in pages),
        longest_sentence=max(page.longest_sentence for page in pages),
        grade=graded.flesch_kincaid_grade,
    )


def _name(report: Report, reading: PageReading) -> str:
    """The number of the spread or the page; "p. 1" for a page that lies on none, among spreads."""
    page = report.pages[reading.page - 1]
    if page.spread is not None:
        return str(page.spread)
    number = re.fullmatch(r"pages? ([\d–]+)", page_name(page))
    own = number.group(1) if number else str(page.number)
    return f"p. {own}" if report.reading.spreads else own
