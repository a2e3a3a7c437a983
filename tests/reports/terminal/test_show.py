"""The report as an author sees it. The expected screens stand beside this file, to be read."""

from __future__ import annotations

import io
import re
from pathlib import Path

import pytest
from rich.cells import cell_len
from rich.console import Console

from proofkit.book import Span
from proofkit.problem import Notice
from proofkit.report import Report
from proofkit.reports.terminal.show import show
from proofkit.reports.terminal.theme import INK, THEME
from tests.reports.goat import SPREADS, book, goat, slip

HERE = Path(__file__).parent
ESCAPE = re.compile(r"\x1b\[[\d;]*m")


def screen(
    report: Report, width: int, *, limit: int = 25, colour: bool = False, show_stet: bool = False
) -> str:
    text = io.StringIO()
    console = Console(
        file=text,
        width=width,
        theme=THEME,
        force_terminal=colour,
        color_system="standard" if colour else None,
        highlight=False,
        legacy_windows=False,
        _environ={},
    )
    show(report, console, limit=limit, show_stet=show_stet)
    return text.getvalue()


def lines(text: str) -> list[str]:
    return [line.rstrip() for line in text.splitlines()]


@pytest.mark.parametrize("width", [50, 80, 120])
def test_the_whole_screen(width: int) -> None:
    expected = (HERE / f"goat-{width}.txt").read_text(encoding="utf-8")
    assert lines(screen(goat(), width)) == lines(expected)


@pytest.mark.parametrize("width", [50, 80, 120])
def test_colour_adds_nothing_but_colour(width: int) -> None:
    coloured = screen(goat(), width, colour=True)
    assert "\x1b[" in coloured
    assert ESCAPE.sub("", coloured) == screen(goat(), width)


def test_there_is_one_ink_beside_the_terminals_own() -> None:
    codes = set(ESCAPE.findall(screen(goat(), 80, colour=True)))
    assert codes == {"\x1b[35m", "\x1b[1m", "\x1b[0m"}
    assert THEME.styles[INK].color is not None


@pytest.mark.parametrize("width", range(40, 160, 7))
def test_no_line_but_a_command_is_wider_than_the_window(width: int) -> None:
    text = [line for line in lines(screen(goat(), width)) if not line.startswith("  proofkit ")]
    assert max(map(cell_len, text)) <= width


@pytest.mark.parametrize("width", [72, 80, 100, 120, 140])
def test_no_width_costs_a_place_a_word_at_fault_or_a_correction(width: int) -> None:
    report = goat()
    text = " ".join(screen(report, width).split())
    for issue in report.errors:
        place = f"spread {report.pages[issue.page - 1].spread}"
        assert re.search(rf"\b{issue.rank} {place} ", text)
    for correction in ("from", "Its", "teeth.", "evening, Nell", "bucket.", "she took", "Mr?"):
        assert f" {correction} " in text
    for fault in ("›form‹", "›the the‹", "›It’s‹", "›teeth‹", "›she␣␣took‹", "›bucket␣.‹"):
        assert fault in text


def test_a_narrow_table_gives_up_the_explanation_first() -> None:
    of = book(*SPREADS)
    reason = "the gulls are many, and the verb that follows them is made for one alone, here as elsewhere"
    report = goat(of, issues=(slip(of, "sat", "sit", check="grammar/agreement", message=reason),))
    narrow = screen(report, 80)
    assert "elsewhere" not in narrow
    assert "›sat‹" in narrow
    assert "spread 4" in narrow


def test_a_long_table_says_how_many_rows_it_holds_back_and_how_to_see_them() -> None:
    text = screen(goat(), 80, limit=3)
    assert "7 more rows held back. To see all:" in text
    assert '  proofkit check "Goat manuscript.docx" --limit 0\n' in text
    assert "›teeth‹" not in text
    assert "held back" not in screen(goat(), 80, limit=0)


def test_notices_come_before_the_table() -> None:
    text = screen(goat(notices=(Notice(text="There are tracked changes."),)), 80)
    assert text.index("Note: There are tracked changes.") < text.index("Errors to mend")


def test_a_clean_book_has_no_table_and_no_headings() -> None:
    text = screen(goat(issues=()), 80)
    assert "no." not in text
    assert "Errors to mend" not in text
    assert "Words" not in text.split("The whole:", maxsplit=1)[0]


def test_without_pages_nothing_is_guessed_about_them() -> None:
    text = screen(goat(paginated=False, issues=()), 80)
    assert "No pages are marked" in text
    assert "spread" not in text.replace("page or spread", "")


def test_an_authors_brackets_are_text_and_not_instructions() -> None:
    of = book("Nell said [bold]baa[/bold] and :goat: and [/].")
    found = slip(of, "[bold]baa", "baa", check="spelling/slip", message="a slip")
    assert "said ›[bold]baa‹[/bold] and :goat: and [/]." in screen(goat(of, issues=(found,)), 120)


def test_a_terminal_without_block_letters_gets_figures_alone() -> None:
    raw = io.BytesIO()
    latin = io.TextIOWrapper(raw, encoding="latin-1", errors="replace")
    show(goat(), Console(file=latin, width=80, theme=THEME, legacy_windows=False), limit=25)
    latin.flush()
    text = raw.getvalue().decode("latin-1")
    strip = text[text.index("taken for yours") : text.index("The whole")]
    assert re.search(r"^words +14 +23 +15", strip, re.MULTILINE)
    assert "??" not in strip


@pytest.mark.parametrize("width", [50, 80, 120])
def test_where_else_a_matter_stands_is_said_at_every_width(width: int) -> None:
    of = book(*SPREADS)
    again = (Span(page=8, start=0, end=2), Span(page=9, start=0, end=2))
    found = slip(of, "Clip-clop", "Clip clop", check="spelling/slip", message="a slip", also=again)
    text = " ".join(screen(goat(of, issues=(found,)), width).split())
    assert "(also on spreads 7 and 8)" in text


@pytest.mark.parametrize("width", [50, 72, 80, 99, 100, 120])
def test_every_row_has_its_key_at_every_width(width: int) -> None:
    report = goat(let_stand={"grammar/its": "so says the goat"})
    words = screen(report, width, show_stet=True).split()
    for issue in report.issues:
        assert words.count(issue.key[:4]) == (2 if issue is report.queries[0] else 1), issue
    assert words.count(report.let_stand[0].issue.key[:4]) == 1


@pytest.mark.parametrize("width", [50, 80, 120])
def test_what_is_let_stand_comes_last_with_its_reason_where_it_is_asked_for(width: int) -> None:
    report = goat(let_stand={"grammar/its": "so says the goat"})
    without = " ".join(screen(report, width).split())
    assert "›It’s‹" not in without
    assert "1 row let stand. To see what: proofkit check" in without
    shown = screen(report, width, show_stet=True)
    assert shown.index("Queries to think about") < shown.index("Let stand") < shown.index("›It’s‹")
    assert re.search(r"stet +spread 9", shown)
    assert all(word in shown for word in ("let stand: so says", "goat"))
    assert "--show-stet" not in shown


def test_a_table_of_nothing_but_what_stands() -> None:
    of = book(*SPREADS)
    found = slip(of, "biscuit", "cake", check="spelling/slip", message="a slip")
    report = goat(of, issues=(found,), let_stand={"spelling/slip": "she likes it"})
    assert "Errors to mend" not in screen(report, 80, show_stet=True)
    assert "let stand: she likes it" in " ".join(screen(report, 80, show_stet=True).split())
    assert "no.  place" not in screen(report, 80)
    assert "1 row let stand." in screen(report, 80)
