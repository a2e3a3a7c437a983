"""The example book's second draft: what was let stand is not shown, what was mended is gone."""

from __future__ import annotations

from pathlib import Path

import pytest
from typer.testing import CliRunner

from examples.make_examples import HERE, NAME
from proofkit.cli.main import app
from proofkit.engines.memory import Memory
from proofkit.pipeline import check_manuscripts
from proofkit.report import Report
from proofkit.settings import Choices

pytestmark = pytest.mark.engine

STANDS = ("supper .", "harbor", "Quil")
MENDED = {"mornign": "morning", "the the": "the"}
NEW = ("The jar wobbled", "The jar wobled")


def report_of(path: Path, memory: Memory) -> Report:
    (outcome,) = check_manuscripts([path], Choices(), memory=memory)
    assert outcome.report is not None, outcome.problem
    return outcome.report


def quotes(report: Report) -> list[str]:
    return sorted(issue.quote for issue in report.issues)


def test_a_second_draft_shows_only_what_is_new_or_still_open(tmp_path: Path) -> None:
    memory = Memory(None)
    first = tmp_path / "wind.md"
    text = (HERE / f"{NAME}.md").read_text("utf-8")
    first.write_text(text, encoding="utf-8")
    before = report_of(first, memory)
    let = [issue for issue in before.issues if issue.quote in STANDS]
    keys = [issue.key for issue in let]
    assert len(keys) == len(STANDS)
    answer = CliRunner().invoke(app, ["stet", str(first), *keys, "--because", "I like it so"])
    assert answer.exit_code == 0, answer.output
    for wrong, right in MENDED.items():
        text = text.replace(wrong, right, 1)
    second = tmp_path / "wind, second draft.md"
    second.write_text(text.replace(*NEW), encoding="utf-8")
    after = report_of(second, memory)
    gone = {issue.quote for issue in let} | set(MENDED)
    still_open = [quote for quote in quotes(before) if quote not in gone]
    assert sorted([*still_open, "wobled"]) == quotes(after)
    assert sorted(each.issue.quote for each in after.let_stand) == sorted(i.quote for i in let)
