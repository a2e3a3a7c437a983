"""Manuscripts of a series, checked with the real language model: what one of them has another way."""

from __future__ import annotations

import os
from collections.abc import Sequence
from pathlib import Path

import pytest

from proofkit.engines.memory import Memory
from proofkit.pipeline import check_manuscripts
from proofkit.report import RankedIssue
from proofkit.series import companions
from proofkit.settings import Choices

FIRST = """# The Bell Boat

## Page 1

Nozibele rowed the bell boat at bedtime.

## Page 2

The boat was grey. “Row on,” said Nozibele.

## Page 3

Every bedtime Nozibele and Mr Tibbs sang to the grey gulls.
"""
SECOND = """# The Kite Cart

## Page 1

Nozibelle pulled the kite cart before bed-time.

## Page 2

The sky was gray. “Fly up,” said Nozibelle.

## Page 3

Mr Tibbs held the string for Nozibelle.
"""


@pytest.fixture
def shelf(tmp_path: Path) -> Path:
    """Two books of a series, each in its folder; the second names the first."""
    for name, text in (("boat", FIRST), ("cart", SECOND)):
        (tmp_path / name).mkdir()
        (tmp_path / name / f"{name}.md").write_text(text, encoding="utf-8")
    (tmp_path / "cart" / "proofkit.toml").write_text('series = ["../boat"]\n', encoding="utf-8")
    return tmp_path


def issues(paths: Sequence[Path], memory: Memory) -> list[RankedIssue]:
    outcomes = list(check_manuscripts(paths, Choices(), memory=memory))
    report = outcomes[-1].report
    assert report is not None, outcomes[-1].problem
    return list(report.issues)


@pytest.mark.engine
def test_names_and_spellings_are_held_against_the_other_book(shelf: Path) -> None:
    found = issues([shelf / "cart" / "cart.md"], Memory(None))
    readings = {issue.quote: issue.suggestions[:1] for issue in found}
    assert readings["Nozibelle"] == ("Nozibele",)
    assert readings["bed-time"] == ("bedtime",)
    assert readings["gray"] == ("grey",)


@pytest.mark.engine
def test_a_book_that_names_no_series_stands_alone(shelf: Path) -> None:
    both = [shelf / "cart" / "cart.md", shelf / "boat" / "boat.md"]
    assert issues(both, Memory(None)) == []


@pytest.mark.engine
def test_two_manuscripts_of_one_books_folder_are_held_against_each_other(shelf: Path) -> None:
    folder = shelf / "cart"
    (folder / "another.md").write_text(FIRST, encoding="utf-8")
    (folder / "proofkit.toml").write_text('title = "Two tales"\n', encoding="utf-8")
    found = issues([folder / "another.md", folder / "cart.md"], Memory(None))
    assert "Nozibelle" in {issue.quote for issue in found}


@pytest.mark.engine
def test_what_was_found_is_remembered_until_the_other_book_changes(shelf: Path) -> None:
    memory = Memory(None)
    cart, boat = shelf / "cart" / "cart.md", shelf / "boat" / "boat.md"
    before = issues([cart], memory)
    assert issues([cart], memory) == before
    boat.write_text(FIRST.replace("Nozibele", "Nozibelle"), encoding="utf-8")
    assert "Nozibelle" not in {issue.quote for issue in issues([cart], memory)}


def test_of_a_folder_the_manuscript_changed_last_is_taken(tmp_path: Path) -> None:
    for age, name in ((200, "new.docx"), (100, "old.docx"), (300, "notes.pdf")):
        (tmp_path / name).write_bytes(b"")
        os.utime(tmp_path / name, (age, age))
    mine = tmp_path / "other" / "mine.docx"
    assert companions(mine, [tmp_path], []) == (tmp_path / "new.docx",)


def test_a_series_that_is_not_there_is_no_companion(tmp_path: Path) -> None:
    assert companions(tmp_path / "mine.md", [tmp_path / "gone"], []) == ()
