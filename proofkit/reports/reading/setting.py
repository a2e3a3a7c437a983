"""How a book reads, set out in words: what every form of the report shows, however it looks."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil
from pathlib import PurePath

from proofkit.reading.bands import AgeBand, Figure, Place, band_named
from proofkit.reading.extent import Extent, Fit
from proofkit.reading.formulas import ease_in_words
from proofkit.reading.measure import Measures
from proofkit.reading.places import JUDGED, figure, value
from proofkit.reading_report import ReadingReport, ReadSpread
from proofkit.reports.fault import one_line
from proofkit.reports.phrases import counted
from proofkit.reports.places import listed, page_name
from proofkit.settings import English

_ENGLISH = {English.BRITISH: "British English", English.AMERICAN: "American English"}
LAST_WORD = "None of these figures is a rule, and no formula hears a story. Before you cut, read it aloud to a child."
_MEASURES = {
    "words": "words",
    "mean_sentence": "words in a sentence",
    "longest_sentence": "words in the longest",
    "syllables_per_word": "syllables in 100 words",
    "off_list": "words off the list, of 100",
    "flesch_kincaid_grade": "grade, Flesch-Kincaid",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One measure of the whole book: its name, what it is here, what is usual, where that is."""

    name: str
    here: str
    usual: str
    place: str


def title(report: ReadingReport) -> str:
    """The book's title, or its file's name where the manuscript gives none."""
    return one_line(report.title) or PurePath(report.path).stem


def about(report: ReadingReport) -> str:
    """The first line, without the title: how long, which English, for whom."""
    words, band = counted(report.book.words, "word"), band_named(report.age_band).phrase
    if not report.paginated:
        where = ""
    elif report.spreads:
        where = f" on {counted(len(report.spreads), 'spread')}"
    else:
        where = f" on {counted(len(report.pages), 'page')}"
    return f"{words}{where}, {_ENGLISH[report.english]}, {band}"


def for_whom(report: ReadingReport) -> str:
    """What is asked of such a book, and how long it takes aloud."""
    band = band_named(report.age_band)
    pace = f"about {duration(report.seconds)} at {report.words_a_minute} words a minute"
    if band.reading == "read to":
        return (
            f"Read to the child, {pace}. It may use harder words than the child reads; its sentences and "
            "spreads must be as short as the child listens."
        )
    return f"Read by the child alone; aloud it takes {pace}."


def duration(seconds: int) -> str:
    """A time in words: "40 seconds", "3 minutes", "4 hours 10 minutes"."""
    if seconds < 60:
        return counted(seconds, "second")
    minutes = round(seconds / 60)
    if minutes < 60:
        return counted(minutes, "minute")
    hours, rest = divmod(minutes, 60)
    return f"{counted(hours, 'hour')} {counted(rest, 'minute')}" if rest else counted(hours, "hour")


def unit(report: ReadingReport) -> str:
    """What lies open at once: "spread", or "page" where spreads are not known."""
    return "spread" if report.spreads else "page"


def step_name(report: ReadingReport, step: ReadSpread) -> str:
    """What the author calls it: "spread 4", "page 6"."""
    if step.spread is not None:
        return f"spread {step.spread}"
    pages = {page.number: page for page in report.pages}
    return page_name(pages[step.pages[0]])


def run_name(step: ReadSpread) -> str:
    """The spreads or pages that the step's scores belong to: "3–5"; "" where they are its own."""
    return f"{step.run[0]}–{step.run[1]}" if step.run else ""


def to_work_on(report: ReadingReport) -> list[ReadSpread]:
    """The steps that have a reason to be worked on, the gravest first."""
    pressing = [step for step in report.steps if step.reasons]
    return sorted(pressing, key=_gravity, reverse=True)


def _gravity(step: ReadSpread) -> tuple[bool, bool, int, int]:
    """A spread without words may be meant so; one with far too many comes before everything."""
    far_too_many = step.places.get("words") is Place.WELL_ABOVE
    return bool(step.measures.words), far_too_many, len(step.reasons), step.measures.words


def rows(report: ReadingReport) -> list[Row]:
    """The measures of the whole book beside what is usual for its band."""
    band = band_named(report.age_band)
    return [_row(report, name, band) for name in JUDGED if report.book.words]


def _row(report: ReadingReport, name: str, band: AgeBand) -> Row:
    here, usual = value(report.book, name, band), figure(name, band)
    label = f"words off {band.word_list.whose}’s list" if name == "off_list" else _MEASURES[name]
    return Row(
        name=label,
        here=_shown(name, here),
        usual=_usual(usual, percent=name == "off_list")
        if usual
        else "any: it is read to the child",
        place=str(report.places.get(name, "")),
    )


def _shown(name: str, here: float | None) -> str:
    if here is None:
        return "too few words"
    if name == "off_list":
        return f"{here:.1f} %"
    return f"{here:.1f}" if name in ("mean_sentence", "flesch_kincaid_grade") else f"{here:,.0f}"


def _usual(usual: Figure, *, percent: bool) -> str:
    sign = " %" if percent else ""
    few = f"{usual.least:,} to" if usual.least else "up to"
    most = f", {usual.most:,}{sign} at most" if usual.most > usual.usual else ""
    return f"{few} {usual.usual:,}{sign}{most}"


def pace_sentences(report: ReadingReport) -> Iterator[str]:
    """How the words are dealt out."""
    pace, steps = report.pace, report.steps
    if not report.paginated:
        yield "No pages are marked, so words on a page or spread were not counted."
    if pace.heaviest and pace.lightest:
        yield (
            f"A {unit(report)} has {pace.usual:.0f} words as a rule; the most are on "
            f"{_named(report, pace.heaviest)} ({steps[pace.heaviest[0]].measures.words}), the fewest on "
            f"{_named(report, pace.lightest)} ({steps[pace.lightest[0]].measures.words})."
        )
    if pace.empty:
        yield f"Without words: {_named(report, pace.empty)}."
    for first, last in pace.in_a_row:
        yield (
            f"Heavy ones in a row: {step_name(report, steps[first])} to {step_name(report, steps[last])}."
        )


def _named(report: ReadingReport, places: tuple[int, ...]) -> str:
    return listed([step_name(report, report.steps[at]) for at in places])


def grade_sentences(report: ReadingReport) -> Iterator[str]:
    """Where the grade is lowest and highest, and what a run is."""
    graded = [step for step in report.steps if step.measures.flesch_kincaid_grade is not None]
    if report.book.words and report.book.flesch_kincaid_grade is None:
        yield "A book of fewer than 100 words has no grade: no formula can tell from so few."
    if len(graded) > 1 and any(step.run for step in graded):
        low, high = min(graded, key=_grade), max(graded, key=_grade)
        if f"{_grade(low):.1f}" == f"{_grade(high):.1f}":
            return
        yield (
            f"Grade by runs: from {_grade(low):.1f} ({_run_or_own(report, low)}) to {_grade(high):.1f} "
            f"({_run_or_own(report, high)}). A {unit(report)} under 100 words has the grade of the smallest run "
            "around it that reaches 100."
        )


def _grade(step: ReadSpread) -> float:
    return step.measures.flesch_kincaid_grade or 0.0


def _run_or_own(report: ReadingReport, step: ReadSpread) -> str:
    kind = "pages" if step.spread is None else "spreads"
    return f"{kind} {run_name(step)}" if step.run else step_name(report, step)


def formulas(measures: Measures) -> str:
    """The other formulas' scores in one sentence; "" where there are too few words."""
    ease = measures.flesch_reading_ease
    scores = (
        ("Flesch reading ease", ease, f" ({ease_in_words(ease)})" if ease is not None else ""),
        ("Spache", measures.spache, ""),
        ("Dale-Chall 1948", measures.dale_chall, ""),
        ("Dale-Chall 1995 cloze", measures.dale_chall_cloze, ""),
        ("SMOG", measures.smog, ""),
        ("Coleman-Liau", measures.coleman_liau, ""),
        ("ARI", measures.ari, _ari_ages(measures.ari)),
        ("Gunning Fog", measures.gunning_fog, ""),
    )
    told = [f"{name} {score:.1f}{more}" for name, score, more in scores if score is not None]
    return f"By other formulas: {', '.join(told)}." if told else ""


def _ari_ages(ari: float | None) -> str:
    """The American ages of an index, a part of a year counted whole: 1 is 5 to 6."""
    if ari is None or not 1 <= ceil(ari) <= 13:
        return ""
    return f" (ages {ceil(ari) + 4} to {ceil(ari) + 5})"


def extent_sentence(report: ReadingReport) -> str:
    """How the text fits books of 24, 32 and 40 pages; "" where that is not asked of the band."""
    fits = [
        f"{each.pages} pages, {each.least} to {each.most} spreads for the story: {_fit(each)}"
        for each in report.extents
    ]
    return f"{'. '.join(fits)}." if fits else ""


def _fit(extent: Extent) -> str:
    if extent.over > 0:
        return f"{counted(extent.over, 'spread')} too many"
    if extent.fit is Fit.TOO_LONG:
        return f"{extent.words_a_spread:.0f} words to a spread, too many"
    if extent.over < 0:
        return f"room for {counted(-extent.over, 'spread')} more"
    return "it fits"
