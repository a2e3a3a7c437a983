from __future__ import annotations

import json
from copy import deepcopy
from functools import cache
from importlib.resources import files
from typing import Any

import msgspec
import pytest
from jsonschema import Draft202012Validator  # type: ignore[import-untyped]  # has no types

from proofkit.problem import Notice
from proofkit.report import Report
from proofkit.reports.json_report import as_json, as_json_array
from tests.reports.goat import goat

REPORTS = {
    "with slips": goat(),
    "clean": goat(issues=()),
    "without pages": goat(issues=(), paginated=False),
    "let stand": goat(let_stand={"grammar/its": "so says the goat", "repetition/doubled-word": ""}),
    "not all checked": goat(notices=(Notice(text="Java did not start.", unchecked=True),)),
}


@cache
def schema() -> Draft202012Validator:
    text = files("proofkit.reports").joinpath("report.schema.json").read_text(encoding="utf-8")
    Draft202012Validator.check_schema(json.loads(text))
    return Draft202012Validator(json.loads(text))


def shaped(report: Report) -> dict[str, Any]:
    value: dict[str, Any] = json.loads(as_json(report))
    return value


@pytest.mark.parametrize("name", REPORTS)
def test_what_is_written_is_what_the_schema_documents(name: str) -> None:
    assert not list(schema().iter_errors(shaped(REPORTS[name])))


@pytest.mark.parametrize("name", REPORTS)
def test_nothing_is_lost_on_the_way(name: str) -> None:
    assert msgspec.json.decode(as_json(REPORTS[name]), type=Report) == REPORTS[name]


def every_field(value: object, path: tuple[str | int, ...] = ()) -> list[tuple[str | int, ...]]:
    if isinstance(value, list):
        return every_field(value[0], (*path, 0)) if value else []
    if not isinstance(value, dict):
        return []
    found = [(*path, key) for key in value]
    for key, inner in value.items():
        found += every_field(inner, (*path, key))
    return found


def test_the_schema_asks_for_every_field_and_knows_no_other() -> None:
    stands = {"repetition/doubled-word": "so says the goat"}
    whole = shaped(goat(notices=(Notice(text="Tracked changes."),), let_stand=stands))
    for *parents, last in every_field(whole):
        for instead in ({}, {f"{last}s": 1}):
            spoilt = deepcopy(whole)
            value: Any = spoilt
            for step in parents:
                value = value[step]
            if instead:
                value.update(instead)
            else:
                del value[last]
            assert list(schema().iter_errors(spoilt)), (parents, last)


def test_every_property_is_described() -> None:
    def undescribed(value: object, path: str) -> list[str]:
        if not isinstance(value, dict):
            return []
        own = [
            f"{path}/{name}"
            for name, property_ in value.get("properties", {}).items()
            if "description" not in property_ and "$ref" not in property_
        ]
        return own + [
            gap for key, inner in value.items() for gap in undescribed(inner, f"{path}/{key}")
        ]

    assert undescribed(schema().schema, "") == []


def test_the_places_of_issues_are_the_characters_of_their_pages() -> None:
    report = shaped(goat())
    for issue in report["issues"]:
        page = report["pages"][issue["page"] - 1]
        assert page["number"] == issue["page"]
        assert page["text"][issue["start"] : issue["end"]] == issue["quote"]


def test_letters_are_written_as_they_are() -> None:
    assert "“Good evening Nell,”" in as_json(goat()).decode("utf-8")


def test_several_reports_are_an_array_of_the_same_objects() -> None:
    reports = [goat(), goat(issues=())]
    assert json.loads(as_json_array(reports)) == [shaped(report) for report in reports]
    assert json.loads(as_json_array([])) == []


def test_a_file_name_that_is_not_text_does_not_stop_the_report() -> None:
    name = b"go\xe4t.docx".decode("utf-8", "surrogateescape")
    assert shaped(goat(path=name))["manuscript"]["path"] == "go\N{REPLACEMENT CHARACTER}t.docx"
