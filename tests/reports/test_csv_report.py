from __future__ import annotations

import csv
import io

import pytest

from proofkit.issue import Tier
from proofkit.reports.csv_report import COLUMNS, as_csv, harmless
from tests.reports.goat import book, goat, slip

ROWS = list(csv.DictReader(io.StringIO(as_csv([goat()]))))


def test_one_row_for_each_issue_in_the_order_of_rank() -> None:
    assert [row["rank"] for row in ROWS] == [str(rank) for rank in range(1, 11)]
    assert [row["tier"] for row in ROWS] == ["error"] * 8 + ["query"] * 2


def test_a_row_says_where_what_and_why() -> None:
    row = ROWS[1]
    assert row["manuscript"] == "Goat manuscript.docx"
    assert row["place"] == "spread 2"
    assert row["words at fault"] == "the the"
    assert "climbed ›the the‹ ninety-nine" in row["in their line"]
    assert row["read"] == "the"
    assert row["why"] == "a word twice"
    assert row["check"] == "repetition/doubled-word"


def test_several_manuscripts_share_one_line_of_headings() -> None:
    rows = list(csv.reader(io.StringIO(as_csv([goat(), goat(path="second.odt")]))))
    assert tuple(rows[0]) == COLUMNS
    assert len(rows) == 21
    assert {row[0] for row in rows[1:]} == {"Goat manuscript.docx", "second.odt"}


def test_no_issues_leave_the_headings_alone() -> None:
    assert as_csv([goat(issues=())]) == ",".join(COLUMNS) + "\r\n"


@pytest.mark.parametrize("start", ["=", "+", "-", "@", "\t", "\r", "\n"])
def test_a_cell_that_a_spreadsheet_would_carry_out_is_made_harmless(start: str) -> None:
    assert harmless(f"{start}SUM(A1)") == f"'{start}SUM(A1)"


def test_other_cells_stay_as_they_are() -> None:
    for cell in ("the goat", "", "“=”", "’tis", "a-b", "3+4"):
        assert harmless(cell) == cell


def test_the_words_of_a_manuscript_cannot_be_a_formula() -> None:
    spread = '=HYPERLINK("http://example.org") said the robot goat.'
    of = book(spread, path="=1.docx")
    found = slip(of, spread[:33], "@SUM(A1)", check="spelling/slip", message="-1", tier=Tier.QUERY)
    text = as_csv([goat(of=of, issues=(found,))])
    cells = list(csv.reader(io.StringIO(text)))[1]
    assert not [cell for cell in cells if cell.startswith(("=", "+", "-", "@"))]
    assert any(cell.startswith("'=HYPERLINK") for cell in cells)
