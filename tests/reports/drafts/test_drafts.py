"""The drafts of the goat's book, as a table, as data and in a sentence."""

from __future__ import annotations

import csv
import io
import json
from dataclasses import replace
from datetime import UTC, datetime
from importlib.resources import files
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator  # type: ignore[import-untyped]  # has no types

from proofkit.cli.screen import sheet
from proofkit.drafts.ledger import record, summaries
from proofkit.drafts.summary import Summary, days_between
from proofkit.reports.drafts.csv_drafts import as_csv
from proofkit.reports.drafts.json_drafts import as_json
from proofkit.reports.drafts.plain import as_plain
from proofkit.reports.drafts.setting import progress
from proofkit.reports.terminal.drafts import show_drafts
from tests.drafts.goat_drafts import SLIPS, draft
from tests.reports.goat import SPREADS

STORY = (
    (0, (), "goat.docx"),
    (3, ("the the", "in form"), "goat v2.docx"),
    (4, ("the the", "in form", "bucket .", "Mister"), "Goat v3 FINAL (2).docx"),
    (30, ("in form", "bucket .", "Mister", "she  took"), "Goat v4 with my editor’s remarks.docx"),
)
ALL = tuple(wrong for wrong, *_ in SLIPS)


@pytest.fixture
def goats(tmp_path: Path) -> tuple[Summary, ...]:
    for day, mended, file in STORY:
        record(tmp_path / "proofkit.db", draft(*mended, day=day, file=file))
    return summaries(tmp_path / "proofkit.db")


def on_a_console(drafts: tuple[Summary, ...], width: int) -> list[str]:
    text = io.StringIO()
    show_drafts(drafts, sheet(text, width))
    return [line.rstrip() for line in text.getvalue().splitlines()]


def test_the_json_is_as_its_schema_documents(goats: tuple[Summary, ...]) -> None:
    text = files("proofkit.reports.drafts").joinpath("drafts.schema.json").read_text("utf-8")
    Draft202012Validator.check_schema(json.loads(text))
    value = json.loads(as_json(goats))
    Draft202012Validator(json.loads(text)).validate(value)
    del value["drafts"][0]["fixed"]
    assert not Draft202012Validator(json.loads(text)).is_valid(value)


def test_the_json_tells_the_story(goats: tuple[Summary, ...]) -> None:
    told = json.loads(as_json(goats))["drafts"]
    names = ("number", "errors", "queries", "fixed", "new", "back_again", "still_there")
    assert [tuple(each[name] for name in names) for each in told] == [
        (1, 6, 1, 0, 7, 0, 0),
        (2, 4, 1, 2, 0, 0, 5),
        (3, 3, 0, 2, 0, 0, 3),
        (4, 3, 0, 1, 0, 1, 2),
    ]
    assert [each["days_since_last"] for each in told] == [None, 3, 1, 26]
    assert told[2]["file"] == "Goat v3 FINAL (2).docx"
    assert told[0]["heaviest_spread"] == 4


def test_a_spreadsheet_has_a_row_a_draft(goats: tuple[Summary, ...]) -> None:
    rows = list(csv.DictReader(io.StringIO(as_csv(goats))))
    assert [row["errors"] for row in rows] == ["6", "4", "3", "3"]
    assert rows[3]["back again"] == "1"


def test_a_files_name_is_no_formula(tmp_path: Path) -> None:
    record(tmp_path / "proofkit.db", draft(file="=HYPERLINK(1).docx"))
    assert "\r\n1,2026-09-01T10:30:00+00:00,,'=HYPERLINK(1).docx," in as_csv(
        summaries(tmp_path / "proofkit.db")
    )


def test_in_a_pipe_the_rows_have_tabs(goats: tuple[Summary, ...]) -> None:
    first, heads, *rows = as_plain(goats).splitlines()
    assert first == (
        "The Lighthouse Goat: 4 drafts from 2026-09-01 to 2026-10-01: errors 6 → 3, queries 1 → 0"
    )
    assert len({line.count("\t") for line in (heads, *rows[:4])}) == 1
    assert rows[3].split("\t")[9:11] == ["1", "1"]
    assert rows[4] == "A slip that was made again after it was mended counts as new here."


@pytest.mark.parametrize("width", [40, 60, 80, 100, 140])
def test_in_a_window_of_any_width_no_line_runs_over_and_the_counts_stay(
    goats: tuple[Summary, ...], width: int
) -> None:
    lines = on_a_console(goats, width)
    assert max(map(len, lines)) <= width
    heads = next(line for line in lines if line.startswith("no."))
    assert {"errors", "queries", "fixed", "new"} <= set(heads.split())


def test_a_strip_shows_how_much_was_still_open(goats: tuple[Summary, ...]) -> None:
    assert "Still open, no. 1 to 4: █▆▄▄" in on_a_console(goats, 80)


def test_of_many_drafts_the_newest_are_shown(goats: tuple[Summary, ...]) -> None:
    many = [replace(goats[n % 3 + 1], number=n + 1) for n in range(100)]
    lines = on_a_console(tuple(many), 80)
    assert sum("  2026-" in line for line in lines) == 40
    assert "60 earlier drafts held back. To see all: proofkit drafts --output drafts.csv" in lines
    strip = next(line for line in lines if line.startswith("Still open, no."))
    name = "Still open, no. 49 to 100: "
    assert strip.startswith(name)
    assert len(strip) - len(name) == 52


def test_days_are_counted_by_the_calendar() -> None:
    late, early = (
        datetime(2026, 11, 24, 23, 50, tzinfo=UTC),
        datetime(2026, 11, 25, 0, 10, tzinfo=UTC),
    )
    assert days_between(late, early) == 1


def test_progress_towards_handing_over(tmp_path: Path, goats: tuple[Summary, ...]) -> None:
    ledger = tmp_path / "proofkit.db"
    assert progress(goats) == "Before handing over: 3 errors to mend, no queries to think about."
    record(ledger, draft(*ALL, day=40))
    record(ledger, draft(*ALL, day=41, age_band="early-reader"))
    assert progress(summaries(ledger)) == (
        "No errors, and every query answered, and 2 drafts without a new error. A human proofreader comes next."
    )
    record(ledger, draft(*ALL, day=42, spreads=(*SPREADS, "The end."), complete=False))
    assert progress(summaries(ledger)).startswith("Before handing over: check again")


def test_one_draft_alone_has_nothing_to_be_compared_with(tmp_path: Path) -> None:
    record(tmp_path / "proofkit.db", draft())
    first, _heads, row, *_ = as_plain(summaries(tmp_path / "proofkit.db")).splitlines()
    assert first.endswith("1 draft, of 2026-09-01: 6 errors to mend, 1 query to think about")
    assert row.split("\t")[9:11] == ["", ""]
