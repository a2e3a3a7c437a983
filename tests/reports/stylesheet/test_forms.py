"""The four forms of one sheet: none loses a cell."""

from __future__ import annotations

import json
from copy import deepcopy
from functools import cache
from importlib.resources import files
from io import BytesIO
from typing import Any

import msgspec
import pytest
from docx import Document
from jsonschema import Draft202012Validator, FormatChecker  # type: ignore[import-untyped]  # has no types
from markdown_it import MarkdownIt

from proofkit.problem import Notice
from proofkit.reports.stylesheet.json_sheet import as_json
from proofkit.reports.stylesheet.markdown import as_markdown
from proofkit.reports.stylesheet.plain import as_plain
from proofkit.reports.stylesheet.setting import LEGEND, tables
from proofkit.reports.stylesheet.word import as_word
from proofkit.stylesheet.sheet import Basis, Part, Section, StyleSheet
from tests.reports.stylesheet.lantern import lantern, word

NOTICE = Notice(text="Tracked changes were read as accepted.")
EMPTY = lantern(sections=())


def every_row(sheet: StyleSheet) -> list[list[str]]:
    return [
        list(row) for table in tables(sheet) for row in (table.heads, *table.rows) if table.rows
    ]


def test_plain_has_each_row_on_a_line_of_its_own() -> None:
    lines = as_plain(lantern(notices=(NOTICE,))).splitlines()
    assert [line.split("\t") for line in lines if "\t" in line] == every_row(lantern())
    assert lines[0].startswith("The Last Lantern: style sheet, British English")
    assert f"Note: {NOTICE.text}" in lines
    assert "No typeface can be seen in a text file." in lines
    assert lines[-1] == LEGEND


def test_markdown_has_the_same_cells_whatever_signs_they_hold() -> None:
    tokens = MarkdownIt("commonmark").enable("table").parse(as_markdown(lantern()))
    rows: list[list[str]] = []
    cell = False
    for token in tokens:
        if token.type == "tr_open":
            rows.append([])
        cell = token.type in ("th_open", "td_open") or (cell and token.type == "inline")
        if token.type == "inline" and cell:
            rows[-1].append("".join(part.content for part in token.children or ()))
    assert rows == every_row(lantern())
    headings = [t.tag for t in tokens if t.type == "heading_open"]
    assert headings == ["h1", *["h2"] * len(tables(lantern()))]


def test_word_has_real_styles_and_every_cell() -> None:
    document = Document(BytesIO(as_word(lantern(notices=(NOTICE,)))))
    by_style = {p.style.name: p.text for p in document.paragraphs if p.style}
    assert by_style["Title"] == "The Last Lantern"
    assert by_style["Subtitle"].startswith("Style sheet, British English, from lantern.docx")
    headings = [p.text for p in document.paragraphs if p.style and p.style.name == "Heading 1"]
    assert headings == [table.heading for table in tables(lantern())]
    rows = [[c.text for c in row.cells] for table in document.tables for row in table.rows]
    assert rows == every_row(lantern())
    assert {table.style and table.style.name for table in document.tables} == {"Style Sheet Table"}
    assert f"Note: {NOTICE.text}" in [p.text for p in document.paragraphs]


def test_word_has_the_book_the_day_and_the_page_on_every_page() -> None:
    document = Document(BytesIO(as_word(lantern())))
    page = document.sections[0]
    assert page.header.paragraphs[0].text == "The Last Lantern: style sheet\t25 November 2026"
    foot = page.footer.paragraphs[0]._p.xml  # noqa: SLF001 - python-docx shows no fields
    assert 'w:instr="PAGE"' in foot
    assert 'w:instr="NUMPAGES"' in foot
    heads = document.tables[0].rows[0]._tr.xml  # noqa: SLF001 - likewise
    assert "w:tblHeader" in heads
    assert document.core_properties.title == "The Last Lantern: style sheet"
    assert document.core_properties.author == ""


@pytest.mark.parametrize("text", ["a\ud800b", "a\x00b", "a\ufffeb", "a\x1bb"])
def test_word_takes_any_characters(text: str) -> None:
    section = Section(part=Part.WORDS, rows=(word(text, Basis.ALWAYS, 2),))
    document = Document(BytesIO(as_word(lantern(sections=(section,), title=text, path=text))))
    assert document.tables[0].rows[1].cells[0].text[0] == "a"


@cache
def schema() -> Draft202012Validator:
    place = files("proofkit.reports.stylesheet").joinpath("stylesheet.schema.json")
    read = json.loads(place.read_text(encoding="utf-8"))
    Draft202012Validator.check_schema(read)
    return Draft202012Validator(read, format_checker=FormatChecker())


def shaped(sheet: StyleSheet) -> dict[str, Any]:
    value: dict[str, Any] = json.loads(as_json(sheet))
    return value


@pytest.mark.parametrize("sheet", [lantern(notices=(NOTICE,)), EMPTY, lantern(paginated=False)])
def test_json_is_what_its_schema_documents_and_loses_nothing(sheet: StyleSheet) -> None:
    assert not list(schema().iter_errors(shaped(sheet)))
    assert msgspec.json.decode(as_json(sheet), type=StyleSheet) == sheet


def every_field(value: object, path: tuple[str | int, ...] = ()) -> list[tuple[str | int, ...]]:
    if isinstance(value, list):
        return every_field(value[0], (*path, 0)) if value else []
    if not isinstance(value, dict):
        return []
    inner = [field for key, each in value.items() for field in every_field(each, (*path, key))]
    return [*((*path, key) for key in value), *inner]


def test_the_schema_asks_for_every_field_and_knows_no_other() -> None:
    whole = shaped(lantern(notices=(NOTICE,)))
    for *parents, last in every_field(whole):
        for more in (False, True):
            spoilt = deepcopy(whole)
            value: Any = spoilt
            for step in parents:
                value = value[step]
            if more:
                value[f"{last}s_"] = 1
            else:
                del value[last]
            assert list(schema().iter_errors(spoilt)), (parents, last)


def test_a_file_name_that_is_no_utf_8_is_written_all_the_same() -> None:
    assert json.loads(as_json(lantern(path="b\udcffd.docx")))["path"] == "b\ufffdd.docx"


def test_word_has_a_width_for_the_columns_of_every_part() -> None:
    sections = tuple(Section(part=part, rows=(word("lamp", Basis.ALWAYS, 2),)) for part in Part)
    document = Document(BytesIO(as_word(lantern(sections=sections))))
    assert len(document.tables) == len(Part)
    for table in document.tables:
        assert sum(column.width or 0 for column in table.columns) == pytest.approx(
            17 * 360000, rel=0.01
        )
