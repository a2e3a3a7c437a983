"""What changed since the last draft, as it is said and marked wherever a report is shown."""

from __future__ import annotations

import io
from dataclasses import replace

import pytest

from proofkit.cli.screen import sheet
from proofkit.report import Report, SinceLast
from proofkit.reports.phrases import ago, since_last, tally, why
from proofkit.reports.plain import as_plain
from proofkit.reports.terminal.show import show
from tests.reports.goat import goat

GOAT = goat()
SINCE = SinceLast(
    draft=4,
    last=3,
    days=13,
    errors=17,
    queries=2,
    fixed=11,
    gone_with_text=0,
    no_longer_raised=0,
    let_stand=0,
    new=1,
    back_again=1,
    still_there=6,
    new_keys=(GOAT.issues[0].key,),
    back_keys=(GOAT.issues[1].key,),
)
LINE = "Since draft 3, 13 days before, errors 17 → 8: 11 fixed, 1 new, 1 back again, 6 still there"


@pytest.fixture
def report() -> Report:
    return replace(GOAT, since_last=SINCE)


def shown(report: Report, width: int) -> str:
    text = io.StringIO()
    show(report, sheet(text, width), limit=0)
    return text.getvalue()


def test_the_report_begins_with_it(report: Report) -> None:
    assert since_last(report) == LINE
    assert as_plain(report).splitlines()[1] == LINE
    assert " ".join(shown(report, 100).split()).find(LINE) < 250
    assert since_last(GOAT) == ""


def test_rows_that_are_new_are_marked_and_the_others_are_not(report: Report) -> None:
    first, second, third, *_ = report.issues
    assert why(report, first) == "new: a wrong word that is a word"
    assert why(report, second) == "back again: a word twice"
    assert why(report, third) == third.message
    rows = as_plain(report)
    assert rows.count("\tnew: ") == rows.count("\tback again: ") == 1
    assert "new: " not in as_plain(GOAT)


@pytest.mark.parametrize("width", [60, 80, 120])
def test_a_terminal_of_any_width_marks_them_and_no_line_runs_over(
    report: Report, width: int
) -> None:
    text = shown(report, width)
    assert text.count("new: ") == 1
    assert " ".join(text.split()).count("back again:") == 1
    # A command is never broken: it may run on.
    assert all(len(line.rstrip()) <= width for line in text.splitlines() if "proofkit " not in line)


def test_where_only_the_new_is_listed_the_tally_says_so(report: Report) -> None:
    part = replace(report, issues=report.issues[:2], since_last=replace(SINCE, new_only=True))
    assert tally(part) == (
        "Only what is new or back again is listed: 2 errors to mend, no queries to think about"
    )
    assert since_last(part) == LINE


def test_where_nothing_became_of_any_error_the_line_is_short() -> None:
    none = replace(SINCE, errors=0, days=1, fixed=0, new=0, back_again=0, still_there=0)
    clean = replace(goat(issues=()), since_last=none)
    assert since_last(clean) == "Since draft 3, the day before, errors 0 → 0"


@pytest.mark.parametrize(
    ("days", "words"),
    [(-1, "the same day"), (0, "the same day"), (1, "the day before"), (1200, "1,200 days before")],
)
def test_how_long_before(days: int, words: str) -> None:
    assert ago(days) == words
