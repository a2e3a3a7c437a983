"""The example's three drafts, checked one after the other: the ledger tells their story."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest
from typer.testing import CliRunner

from examples.make_examples import HERE, OWN_FILE, drafts
from proofkit.cli.main import app

FOLDER = HERE / "drafts"


def run(*words: str) -> str:
    answer = CliRunner().invoke(app, list(words))
    assert answer.exit_code in (0, 1), answer.output
    return answer.stdout


def test_the_drafts_are_as_their_script_makes_them() -> None:
    assert (FOLDER / "proofkit.toml").read_text("utf-8") == OWN_FILE
    assert {name: (FOLDER / name).read_bytes() for name in drafts()} == drafts()


@pytest.mark.engine
def test_the_ledger_tells_the_story_of_the_three_drafts(tmp_path: Path) -> None:
    book = tmp_path / "wind"
    shutil.copytree(FOLDER, book)
    for name in drafts():
        run("check", str(book / name))
    rows = json.loads(run("drafts", str(book), "--format", "json"))["drafts"]
    first, second, third = rows
    assert first["errors"] > second["errors"] > third["errors"] == 1
    assert second["new"] == 1
    assert second["fixed"] >= 8
    assert third["new"] == 0
    assert third["back_again"] == 1
    assert [Path(row["file"]).name for row in rows] == list(drafts())


@pytest.mark.engine
def test_the_same_draft_again_adds_nothing(tmp_path: Path) -> None:
    book = tmp_path / "wind"
    shutil.copytree(FOLDER, book)
    for _ in range(2):
        run("check", str(book / "wind.md"))
    assert len(json.loads(run("drafts", str(book), "--format", "json"))["drafts"]) == 1
