"""The report as JSON, CSV, plain lines and a table."""

from __future__ import annotations

import csv
import io
import json
from dataclasses import replace
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator  # type: ignore[import-untyped]  # has no types

import proofkit.reports.reading
from proofkit.book import Span
from proofkit.cli.screen import sheet
from proofkit.reading.rhythm.place import RhythmPlace, Stumble
from proofkit.reading_report import ReadingReport
from proofkit.reports.reading.csv_reading import COLUMNS, as_csv
from proofkit.reports.reading.json_reading import as_json, as_json_array
from proofkit.reports.reading.language import rhythm_sentences
from proofkit.reports.reading.plain import as_plain
from proofkit.reports.terminal.reading_table import show_reading
from tests.reports.reading.heron import LINE, VERSE, book, report

REPORTS = {
    "a picture book": report(),
    "an early reader": report(age_band="early-reader"),
    "a long book": report(age_band="middle-grade"),
    "verse": report(book(VERSE, VERSE)),
    "pages": report(book(LINE, LINE * 9, spreads=False)),
    "one run": report(book(LINE * 30, spreads=False, paginated=False)),
    "no words": report(book("", "")),
    "remarks": report(remarks=("The language model failed.",)),
}


def table(of: ReadingReport, width: int = 80) -> str:
    text = io.StringIO()
    show_reading(of, sheet(text, width))
    return text.getvalue()


@pytest.mark.parametrize("name", REPORTS)
def test_the_schema_documents_what_is_written(name: str) -> None:
    file = Path(proofkit.reports.reading.__file__).with_name("reading.schema.json")
    schema = json.loads(file.read_text(encoding="utf-8"))
    validator = Draft202012Validator(schema)
    validator.check_schema(schema)
    assert list(validator.iter_errors(json.loads(as_json(REPORTS[name])))) == []
    broken = json.loads(as_json(REPORTS[name])) | {"surprise": 1}
    assert list(validator.iter_errors(broken))


def test_pages_and_spreads_are_flat() -> None:
    read = json.loads(as_json(report()))
    page, spread = read["pages"][3], read["spreads"][3]
    assert (page["words"], page["sentences"], page["longest_sentence"]) == (92, 9, 11)
    assert page["flesch_kincaid_grade"] == report().pages[3].measures.flesch_kincaid_grade
    assert {"syllables_per_word", "flesch_reading_ease", "ari"} <= page.keys()
    assert (spread["words"], spread["places"]["words"]) == (92, "well above")
    assert read["pace"]["heaviest"] == ["spread 4"]
    assert read["pace"]["in_a_row"] == [["spread 4", "spread 6"]]
    assert "pages" not in read["book"]


def test_several_reports_are_an_array() -> None:
    assert [each["title"] for each in json.loads(as_json_array([report(), report()]))] == [
        "The Heron"
    ] * 2


def test_csv_has_a_row_for_the_book_each_spread_and_each_page() -> None:
    read = list(csv.DictReader(io.StringIO(as_csv([report()]))))
    assert tuple(read[0]) == COLUMNS
    assert [row["what"] for row in read] == ["book"] + ["spread"] * 12 + ["page"] * 12
    spread = read[4]
    assert (spread["name"], spread["words"]) == ("spread 4", "92")
    assert spread["words beside the band"] == "well above"
    assert spread["why to work on it"].startswith("92 words")


def test_no_cell_is_a_formula() -> None:
    read = list(csv.reader(io.StringIO(as_csv([report(book(LINE, title="=1+1"))]))))
    assert not any(cell.startswith("=") for row in read for cell in row)


def test_plain_lines_have_tabs_and_no_decoration() -> None:
    lines = as_plain(report()).splitlines()
    assert lines[0] == f"The Heron: {lines[0].partition(': ')[2]}"
    assert "Spreads to work on, the gravest first" in lines
    assert any(line.startswith("spread 4\t92 words, where") for line in lines)
    assert any(line.startswith("spread 1\t33\t11\t") for line in lines)
    assert "sieve\tspread 4\tnet\tone word in 900,000" in lines
    assert not set("█│") & set(as_plain(report()))


@pytest.mark.parametrize("name", REPORTS)
@pytest.mark.parametrize("width", [40, 80, 120])
def test_no_line_is_wider_than_the_window(name: str, width: int) -> None:
    assert max(map(len, table(REPORTS[name], width).splitlines())) <= width


def test_bars_are_as_long_as_the_words_are_many_and_the_band_is_marked() -> None:
    lines = {
        line.split()[1]: line
        for line in table(report()).splitlines()
        if line.startswith("  spread") and "│" in line
    }
    lengths = {name: line.count("█") for name, line in lines.items()}
    assert lengths["4"] > lengths["5"] > lengths["1"] > lengths["2"] > lengths["7"] == 0
    assert all(line.count("│") == 2 for line in lines.values())
    marks = {line.index("│") for line in lines.values()}
    assert len(marks) == 1


def test_the_table_tells_what_to_work_on_before_all_figures() -> None:
    shown = table(report())
    assert shown.index("to work on") < shown.index("longest") < shown.index("The whole")
    assert "No spread stands out" in table(report(book(*[LINE * 3] * 12)))


def test_a_remark_is_said_first() -> None:
    shown = table(REPORTS["remarks"])
    assert shown.index("Note: The language model failed.") < shown.index("to work on")
    assert "Note: The language model failed." in as_plain(REPORTS["remarks"]).splitlines()


def test_where_the_terminal_has_no_blocks_bars_are_plain() -> None:
    stream = io.TextIOWrapper(io.BytesIO(), encoding="ascii", errors="replace")
    show_reading(report(), sheet(stream, 80))
    stream.seek(0)
    bars = [
        line for line in stream.read().splitlines() if line.startswith("  spread 4") and "#" in line
    ]
    assert len(bars) == 1
    assert bars[0].count("|") == 2


def test_where_a_voice_may_stumble_is_said_with_its_words() -> None:
    of = book("She sells sea shells.", LINE * 3)
    words = tuple(Span(page=1, start=at, end=at + 3) for at in (0, 10))
    place = RhythmPlace(kind=Stumble.TWISTER, span=Span(page=1, start=0, end=20), words=words)
    spoken = list(rhythm_sentences(replace(report(of), rhythm=(place,))))
    assert spoken == ["Read spread 1 aloud: a run that twists the tongue (“She”, “sea”)."]
