"""The whole report on a console, from the line about the book to the line that says what to do next."""

from __future__ import annotations

from rich.console import Console
from rich.text import Text

from proofkit.report import Report
from proofkit.reports.phrases import (
    Advice,
    about,
    confirmable,
    held_back,
    let_stand,
    more_about,
    next_step,
    since_last,
    tally,
    title,
)
from proofkit.reports.shown import MOST_WORDS, rows_shown
from proofkit.reports.terminal.reading import reading_section
from proofkit.reports.terminal.table import issue_table
from proofkit.reports.terminal.theme import INK, STRONG


def show(report: Report, console: Console, *, limit: int, show_stet: bool = False) -> None:
    """Print the report; ``limit`` is how many rows of the table are shown, 0 for all.

    With ``show_stet`` the rows let stand come after the others.
    """
    console.print(Text.assemble((title(report), STRONG), f": {about(report)}"))
    if since := since_last(report):
        console.print(Text(since, STRONG))
    console.print(Text(tally(report)))
    for notice in report.notices:
        console.print(Text.assemble(("Note: ", INK), notice.text))
    _show_issues(report, console, limit, show_stet=show_stet)
    _show_words(report, console)
    console.print()
    for line in reading_section(report, console.width, bars=console.encoding.startswith("utf")):
        console.print(line)
    console.print()
    if report.issues:
        _advise(console, more_about(report), INK)
    _advise(console, next_step(report), STRONG)


def _show_issues(report: Report, console: Console, limit: int, *, show_stet: bool) -> None:
    if not report.issues and not report.let_stand:
        return
    shown, hidden = rows_shown(report, limit)
    stands = report.let_stand if show_stet else ()
    console.print()
    if shown or stands:
        for part in issue_table(report, shown, console.width, stands=stands):
            console.print(part)
    if hidden:
        _advise(console, held_back(hidden, report), INK)
    if report.let_stand and not show_stet:
        _advise(console, let_stand(report), INK)


def _show_words(report: Report, console: Console) -> None:
    words = report.words_to_confirm
    if not words:
        return
    named = "; ".join(confirmable(report, word) for word in words[:MOST_WORDS])
    more = f"; and {len(words) - MOST_WORDS:,} more" if len(words) > MOST_WORDS else ""
    heading = ("Not in the dictionary, and taken for yours: ", INK)
    console.print()
    console.print(Text.assemble(heading, f"{named}{more}"))


def _advise(console: Console, advice: Advice, style: str) -> None:
    """Advice, its command in one piece: a line of its own where it doesn't fit behind the sentence."""
    if len(str(advice)) <= console.width or not advice.command:
        console.print(Text(str(advice), style))
        return
    console.print(Text(f"{advice.sentence}:", style))
    console.print(Text(f"  {advice.command}", style), soft_wrap=True)
