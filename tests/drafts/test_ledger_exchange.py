from __future__ import annotations

import json
import shutil
import sqlite3
from dataclasses import replace
from importlib.resources import files
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator  # type: ignore[import-untyped]  # has no types

from proofkit.drafts import exchange, ledger_file
from proofkit.drafts import ledger as ledger_module
from proofkit.drafts.draft import Draft
from proofkit.drafts.exchange import Imported, exported, import_into
from proofkit.drafts.ledger import drafts, record, summaries
from proofkit.drafts.ledger_file import LEDGER
from proofkit.drafts.schema import MIGRATIONS
from proofkit.problem import Unusable
from proofkit.rulings.ruling import Ruling
from tests.drafts.goat_drafts import SLIPS, draft

STET = Ruling(at="proofkit.toml, line 4", word="clip-clop", because="it is the goat’s own")


def history(*days: int) -> list[Draft]:
    """The goat's drafts of these days: each has as many slips mended as its day."""
    return [
        draft(*[wrong for wrong, *_ in SLIPS[:day]], day=day, rulings=(STET,) if day else ())
        for day in days
    ]


def ledger_of(folder: Path, *days: int) -> Path:
    folder.mkdir()
    for each in history(*days):
        record(folder / LEDGER, each)
    return folder / LEDGER


def numbered(*days: int) -> list[Draft]:
    return [replace(each, number=number) for number, each in enumerate(history(*days), 1)]


def test_what_is_exported_is_what_the_schema_documents(tmp_path: Path) -> None:
    text = files("proofkit.drafts").joinpath("export.schema.json").read_text(encoding="utf-8")
    Draft202012Validator.check_schema(json.loads(text))
    value = json.loads(exported(ledger_of(tmp_path / "one", 0, 1, 2)))
    Draft202012Validator(json.loads(text)).validate(value)
    assert len(value["drafts"]) == 3
    assert len(value["texts"]) == len({t for each in history(0, 1, 2) for t in each.texts})
    value["drafts"][0]["pages"][0]["colour"] = "red"
    assert not Draft202012Validator(json.loads(text)).is_valid(value)


def test_on_another_computer_the_ledger_is_the_same(tmp_path: Path) -> None:
    here = ledger_of(tmp_path / "here", 0, 1, 3)
    (tmp_path / "drafts.json").write_bytes(exported(here))
    (tmp_path / "there").mkdir()
    there = tmp_path / "there" / LEDGER
    assert import_into(there, tmp_path / "drafts.json") == Imported(added=3, known=0)
    assert list(drafts(there)) == list(drafts(here)) == numbered(0, 1, 3)
    assert summaries(there) == summaries(here)
    assert import_into(there, tmp_path / "drafts.json") == Imported(added=0, known=3)
    assert summaries(there) == summaries(here)


def test_a_syncing_services_copy_comes_in_between_by_date(tmp_path: Path) -> None:
    here = ledger_of(tmp_path / "here", 0, 2, 5)
    copy = tmp_path / "here" / "proofkit (conflicted copy).db"
    shutil.copy(ledger_of(tmp_path / "other", 0, 1, 3), copy)
    assert import_into(here, copy) == Imported(added=2, known=1)
    assert list(drafts(here)) == numbered(0, 1, 2, 3, 5)
    assert [summary.counts.fixed for summary in summaries(here)] == [0, 1, 1, 1, 2]
    assert summaries(here) == summaries(ledger_of(tmp_path / "all", 0, 1, 2, 3, 5))


def test_a_draft_that_comes_twice_is_taken_once(tmp_path: Path) -> None:
    value = json.loads(exported(ledger_of(tmp_path / "one", 0, 1)))
    value["drafts"].append(value["drafts"][1])
    (tmp_path / "twice.json").write_text(json.dumps(value))
    assert import_into(tmp_path / LEDGER, tmp_path / "twice.json") == Imported(added=2, known=1)


def test_an_import_that_fails_half_way_leaves_the_ledger_as_it_was(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    here, other = ledger_of(tmp_path / "here", 1, 4), ledger_of(tmp_path / "other", 0, 2)
    add, done = ledger_module.add, []

    def failing(base: sqlite3.Connection, draft_: Draft) -> object:
        done.append(draft_)
        if len(done) == 3:
            raise KeyboardInterrupt
        return add(base, draft_)

    with monkeypatch.context() as patch:
        patch.setattr(exchange, "add", failing)
        with pytest.raises(KeyboardInterrupt):
            import_into(here, other)
    assert list(drafts(here)) == numbered(1, 4)
    assert import_into(here, other).added == 2


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"Once upon a time",
        b"{}",
        b"{}x",
        b'{"schema_version": 2, "texts": [], "drafts": []}',
        b'{"drafts": [{"number": 1}]}',
        b"\xff\xfe",
        b'[{"a": 1}]',
    ],
)
def test_what_is_no_export_is_refused(tmp_path: Path, content: bytes) -> None:
    source = tmp_path / "story.json"
    source.write_bytes(content)
    with pytest.raises(Unusable, match="nothing was brought in"):
        import_into(tmp_path / LEDGER, source)
    assert not (tmp_path / LEDGER).exists()


@pytest.mark.parametrize(
    ("name", "value"), [("date", "2026-09-01T10:30:00"), ("date", "yesterday"), ("pages", [{}])]
)
def test_an_export_that_was_written_in_by_hand_is_refused(
    tmp_path: Path, name: str, value: object
) -> None:
    told = json.loads(exported(ledger_of(tmp_path / "one", 0)))
    told["drafts"][0][name] = value
    (tmp_path / "changed.json").write_text(json.dumps(told))
    with pytest.raises(Unusable, match="nothing was brought in"):
        import_into(tmp_path / LEDGER, tmp_path / "changed.json")


def test_what_is_not_there_can_not_be_imported(tmp_path: Path) -> None:
    with pytest.raises(Unusable, match="can’t be read"):
        import_into(tmp_path / LEDGER, tmp_path / "nowhere.json")


def test_a_text_that_is_pointed_at_and_missing_is_refused(tmp_path: Path) -> None:
    told = json.loads(exported(ledger_of(tmp_path / "one", 0)))
    for wrong in (-1, 10_000):
        told["drafts"][0]["pages"][0]["text"] = wrong
        (tmp_path / "changed.json").write_text(json.dumps(told))
        with pytest.raises(Unusable, match="nothing was brought in"):
            import_into(tmp_path / LEDGER, tmp_path / "changed.json")


def test_a_ledger_that_is_brought_in_is_only_read(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with monkeypatch.context() as patch:
        patch.setattr(ledger_file, "MIGRATIONS", MIGRATIONS[:1])
        patch.setattr(ledger_file, "LAYOUT", 1)
        older = ledger_of(tmp_path / "older", 0, 1)
    content, changed = older.read_bytes(), older.stat().st_mtime_ns
    assert import_into(tmp_path / LEDGER, older).added == 2
    assert (older.read_bytes(), older.stat().st_mtime_ns) == (content, changed)
    assert list(older.parent.iterdir()) == [older]


def test_a_damaged_ledger_is_named_as_it_was_named(tmp_path: Path) -> None:
    ledger = ledger_of(tmp_path / "one", 0, 1)
    ledger.write_bytes(ledger.read_bytes()[:5000])
    with pytest.raises(Unusable, match="damaged") as problem:
        import_into(tmp_path / LEDGER, ledger)
    assert str(ledger) in str(problem.value)
