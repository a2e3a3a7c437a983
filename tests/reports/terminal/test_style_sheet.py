from __future__ import annotations

import io

import pytest

from proofkit.cli.screen import sheet as paper
from proofkit.problem import Notice
from proofkit.reports.stylesheet.setting import tables
from proofkit.reports.terminal.style_sheet import show_style_sheet
from tests.reports.stylesheet.lantern import lantern


def shown(width: int) -> str:
    text = io.StringIO()
    notice = Notice(text="Tracked changes were read as accepted.")
    show_style_sheet(lantern(notices=(notice,)), paper(text, width))
    return text.getvalue()


@pytest.mark.parametrize("width", [40, 60, 80, 120])
def test_no_word_is_lost_and_no_line_too_long(width: int) -> None:
    text = shown(width)
    assert max(map(len, text.splitlines())) <= width
    words = set(text.split())
    for table in tables(lantern()):
        for row in table.rows:
            assert {word for cell in row for word in cell.split()} <= words, row


def test_at_80_columns_a_section_is_a_heading_and_a_table() -> None:
    lines = [line.rstrip() for line in shown(80).splitlines()]
    start = lines.index("Characters")
    assert lines[start : start + 4] == [
        "Characters",
        "  name      how              first on  last on   notes",
        "  Ada Pell  decided (3)      spread 1  spread 7  she",
        "  Mr Wick   mostly (3 of 4)  spread 2  spread 4  also Mister Wick (spread 5)",
    ]


def test_in_a_narrow_window_a_row_is_a_few_lines() -> None:
    lines = [line.rstrip() for line in shown(40).splitlines()]
    start = lines.index("  lamp-lighter")
    assert lines[start + 1 : start + 3] == ["    how: seen once", "    first on: spread 3"]
