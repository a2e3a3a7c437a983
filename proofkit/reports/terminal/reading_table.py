"""How a book reads, on a console: what to work on, bars of words with the band marked, the whole."""

from __future__ import annotations

from collections.abc import Sequence

from rich.console import Console
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

from proofkit.reading.bands import AgeBand, band_named
from proofkit.reading_report import ReadingReport, ReadSpread
from proofkit.reports.reading.language import HardRow, hard_rows, sentences_on_language
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
from proofkit.reports.terminal.theme import FAULT, INK, STRONG

_MOST_TO_WORK_ON = 6  # more than can be kept in mind is no help
_MOST_BARS = 40
_MOST_HARD = 12
_INDENT = 2
_FIGURES = 19  # characters of the columns of words and sentences, with the gaps
_WIDEST_BAR = 60
_NARROWEST_BAR = 10


def show_reading(report: ReadingReport, console: Console) -> None:
    """Print the report; its last word is what can't be told from figures."""
    console.print(Text.assemble((title(report), STRONG), f": {about(report)}"))
    console.print(Text(for_whom(report)))
    for remark in report.remarks:
        console.print(Text.assemble(("Note: ", INK), remark))
    _show_work(report, console)
    if 1 < len(report.steps) <= _MOST_BARS:
        _show_bars(report, console)
    for sentence in (*pace_sentences(report), *grade_sentences(report)):
        console.print(Text(sentence))
    _show_language(report, console)
    _show_whole(report, console)
    for sentence in filter(None, (formulas(report.book), extent_sentence(report))):
        console.print(Text(sentence))
    console.print()
    console.print(Text(LAST_WORD, STRONG))


def _show_work(report: ReadingReport, console: Console) -> None:
    gravest = to_work_on(report)
    console.print()
    if not gravest:
        if report.steps:
            console.print(Text(f"No {unit(report)} stands out.", STRONG))
        return
    console.print(Text(f"{unit(report).capitalize()}s to work on, the gravest first", STRONG))
    grid = Table(box=None, padding=(0, 2, 0, 0), pad_edge=False, show_header=False)
    for step in gravest[:_MOST_TO_WORK_ON]:
        grid.add_row(Text(step_name(report, step), INK), Text("; ".join(step.reasons)))
    console.print(Padding(grid, (0, 0, 0, _INDENT)))
    if len(gravest) > _MOST_TO_WORK_ON:
        others = gravest[_MOST_TO_WORK_ON:]
        names = ", ".join(step_name(report, step) for step in sorted(others, key=lambda s: s.pages))
        console.print(Padding(Text(f"and {names}"), (0, 0, 0, _INDENT)))


def _show_bars(report: ReadingReport, console: Console) -> None:
    band = band_named(report.age_band)
    names = [step_name(report, step) for step in report.steps]
    grades = [_grade(step) for step in report.steps]
    name_width, grade_width = max(map(len, names)), max(len("grade"), *map(len, grades))
    room = _room(console.width - _INDENT - name_width - grade_width)
    line = "│" if console.encoding.startswith("utf") else "|"
    usual, most = band.spread_words.usual, band.spread_words.most
    marked = f"{line} {usual} usual, {most} at most" if room else ""
    head = f"{'':{_INDENT + name_width}}{'words':>6}  {'longest':>7}  {'grade':{grade_width}}  {marked}"
    scale = max(most, *(step.measures.words for step in report.steps))
    console.print()
    console.print(Text(head.rstrip(), INK, no_wrap=True))
    for name, grade, step in zip(names, grades, report.steps, strict=True):
        text = Text(f"{'':{_INDENT}}", no_wrap=True)
        text.append(f"{name:{name_width}}", INK)
        text.append(f"{step.measures.words:>6}", FAULT if step.reasons else "")
        text.append(f"  {step.measures.longest_sentence or '':>7}  {grade:{grade_width}}  ")
        text.append(_bar(step.measures.words, scale, room, band, line), INK)
        text.rstrip()
        console.print(text)


def _room(columns: int) -> int:
    """How long a bar can be; 0 where there is too little room for any."""
    room = min(_WIDEST_BAR, columns - _FIGURES)
    return room if room >= _NARROWEST_BAR else 0


def _grade(step: ReadSpread) -> str:
    grade, run = step.measures.flesch_kincaid_grade, run_name(step)
    if grade is None:
        return ""
    return f"{grade:.1f} ({run})" if run else f"{grade:.1f}"


def _bar(words: int, scale: int, room: int, band: AgeBand, line: str) -> str:
    """A bar as long as the words are many, with the band's usual and most marked in it."""
    block = "█" if line == "│" else "#"
    filled = round(room * words / scale)
    cells = [block if at < filled else " " for at in range(room)]
    for mark in (band.spread_words.usual, band.spread_words.most):
        at = round(room * mark / scale) - 1
        if at >= 0:
            cells[at] = line
    return "".join(cells).rstrip()


def _show_language(report: ReadingReport, console: Console) -> None:
    hard, told = hard_rows(report), list(sentences_on_language(report))
    if hard or told:
        console.print()
    if hard:
        console.print(Padding(_hard_words(hard[:_MOST_HARD]), (0, 0, 0, _INDENT)))
    if len(hard) > _MOST_HARD:
        more = f"and {len(hard) - _MOST_HARD:,} more, which --format html and json have"
        console.print(Padding(Text(more), (0, 0, 0, _INDENT)))
    for sentence in told:
        console.print(Text(sentence))


def _hard_words(hard: Sequence[HardRow]) -> Table:
    """The words in a row each; a column that would be empty is left out."""
    columns = (
        ("Beyond the age", [row.word for row in hard]),
        ("where", [row.where for row in hard]),
        ("simpler", [row.simpler for row in hard]),
        ("why", [row.why for row in hard]),
    )
    filled = [(head, cells) for head, cells in columns if any(cells)]
    grid = Table(box=None, padding=(0, 2, 0, 0), pad_edge=False, header_style=INK)
    for head, _ in filled:
        grid.add_column(Text(head, INK))
    for cells in zip(*(cells for _, cells in filled), strict=True):
        grid.add_row(*map(Text, cells))
    return grid


def _show_whole(report: ReadingReport, console: Console) -> None:
    found = rows(report)
    if not found:
        return
    console.print()
    grid = Table(box=None, padding=(0, 2, 0, 0), pad_edge=False, header_style=INK)
    for head in ("The whole", "here", f"{band_named(report.age_band).plural} usually", ""):
        grid.add_column(Text(head, INK), justify="right" if head == "here" else "left")
    for row in found:
        above = row.place.endswith("above")
        grid.add_row(
            Text(row.name), Text(row.here), Text(row.usual), Text(row.place, FAULT if above else "")
        )
    console.print(Padding(grid, (0, 0, 0, _INDENT)))
