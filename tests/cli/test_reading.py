"""``proofkit reading`` from its options to its exit code; the language model is left out."""

from __future__ import annotations

import json
import os
from collections.abc import Sequence
from pathlib import Path
from types import TracebackType
from typing import Self

import pytest
from typer.testing import CliRunner, Result

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.cli.main import app
from proofkit.problem import Notice
from proofkit.settings import English
from proofkit.words.vocabulary import vocabulary_of

TEXT = (
    "# The Heron\n\n## Spread 1\n\nThe heron stood in the water and waited for a fish.\n\n"
    "## Spread 2\n\nShe waited all the day.\n"
)


class FakeAnalyst:
    """An analyst that knows the books' words and nothing of their grammar."""

    notices: tuple[Notice, ...] = ()
    asked = 0

    def __init__(self, **_: object) -> None:
        pass

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        problem: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        pass

    def analyse(
        self, books: Sequence[tuple[Book, English]], *, language_model: bool, grammar_engine: bool
    ) -> list[Analysis]:
        assert language_model
        assert not grammar_engine
        type(self).asked += 1
        return [
            Analysis(english=english, vocabulary=vocabulary_of(book)) for book, english in books
        ]


@pytest.fixture(autouse=True)
def folder(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Path:
    monkeypatch.setattr("proofkit.engines.analyse.Analyst", FakeAnalyst)
    monkeypatch.setattr(FakeAnalyst, "asked", 0)
    monkeypatch.setattr(FakeAnalyst, "notices", ())
    monkeypatch.setenv("PROOFKIT_CACHE", str(tmp_path / "cache"))
    monkeypatch.chdir(tmp_path)
    Path("heron.md").write_text(TEXT, encoding="utf-8")
    Path("frog.md").write_text(TEXT.replace("heron", "frog").replace("Heron", "Frog"), "utf-8")
    return tmp_path


def reading(*arguments: str) -> Result:
    return CliRunner().invoke(app, ["reading", *arguments])


def test_into_a_pipe_the_table_is_plain() -> None:
    result = reading("heron.md")
    assert result.exit_code == 0
    assert result.stdout.startswith("The Heron: 16 words on 2 spreads, ")
    assert "spread 1\t11\t11\t" in result.stdout
    assert "\x1b" not in result.output


@pytest.mark.parametrize(
    ("arguments", "name", "start"),
    [
        (["--output", "h.json"], "h.json", b"{"),
        (["--output", "h.csv"], "h.csv", "\ufeffmanuscript,".encode()),
        (["--output", "h.html"], "h.html", b"<!doctype html>"),
        (["--output", "h.report.txt"], "h.report.txt", b"The Heron: 16 words"),
        (["--output", "out/"], "out/heron.reading.json", b"{"),
        (["--output", "out/", "--format", "html"], "out/heron.reading.html", b"<!doctype html>"),
        (["--output", "out/", "--format", "table"], "out/heron.reading.report.txt", b"The Heron"),
    ],
)
def test_the_form_is_the_one_asked_for_or_told_by_the_files_ending(
    arguments: list[str], name: str, start: bytes
) -> None:
    for _ in range(2):  # its own report it writes over
        result = reading("heron.md", *arguments)
        assert result.exit_code == 0, result.output
        assert Path(name).read_bytes()[: len(start)].lower() == start.lower()
    assert "The report is in" in result.stdout


def test_the_age_band_is_the_one_asked_for_or_the_books_own() -> None:
    Path("proofkit.toml").write_text('age-band = "early-reader"\nwords-a-minute = 60\n', "utf-8")
    own = json.loads(reading("heron.md", "--format", "json").stdout)
    assert (own["age_band"], own["reading"], own["words_a_minute"]) == (
        "early-reader",
        "read by",
        60,
    )
    assert own["book"]["seconds"] == 16
    asked = json.loads(reading("heron.md", "--format", "json", "--age-band", "board").stdout)
    assert (asked["age_band"], asked["reading"]) == ("board", "read to")


def test_several_books_are_an_array_or_one_after_another() -> None:
    read = json.loads(reading("heron.md", "frog.md", "--format", "json").stdout)
    assert [each["title"] for each in read] == ["The Heron", "The Frog"]
    assert "== frog.md ==" in reading("heron.md", "frog.md").stdout
    result = reading("heron.md", "frog.md", "--format", "html")
    assert result.exit_code == 2
    assert "--output FOLDER/" in result.stderr


def test_one_that_cannot_be_read_stops_no_other() -> None:
    result = reading("gone.md", "heron.md")
    assert result.exit_code == 2
    assert "gone.md" in result.stderr
    assert "The Heron" in result.stdout


def test_an_unknown_band_names_those_there_are() -> None:
    result = reading("heron.md", "--age-band", "toddler")
    assert result.exit_code == 2
    assert "early-reader" in result.stderr


def test_a_manuscript_is_never_written_over() -> None:
    result = reading("heron.md", "--output", "frog.md")
    assert result.exit_code == 2
    assert Path("frog.md").read_text(encoding="utf-8").startswith("# The Frog")
    assert FakeAnalyst.asked == 0


@pytest.mark.usefixtures("folder")
def test_an_unchanged_book_asks_no_engine_again() -> None:
    first = reading("heron.md", "--format", "json").stdout
    again = reading("heron.md", "--format", "json").stdout
    assert first == again
    assert FakeAnalyst.asked == 1
    reading("heron.md", "--age-band", "chapter")
    assert FakeAnalyst.asked == 2


def test_what_could_not_be_looked_at_is_said_and_not_remembered(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    notice = Notice(text="The language model failed.", unchecked=True)
    monkeypatch.setattr(FakeAnalyst, "notices", (notice,))
    result = reading("heron.md")
    assert result.exit_code == 3
    assert "Note: The language model failed." in result.stdout
    monkeypatch.setattr(FakeAnalyst, "notices", ())
    assert reading("heron.md").exit_code == 0
    assert FakeAnalyst.asked == 2


@pytest.mark.skipif(os.name != "posix" or os.geteuid() == 0, reason="root may write anywhere")
def test_a_folder_that_cannot_be_written_to_is_named_before_the_work(folder: Path) -> None:
    closed = folder / "closed"
    closed.mkdir(mode=0o555)
    result = reading("heron.md", "--output", str(closed / "h.json"))
    assert result.exit_code == 2
    assert FakeAnalyst.asked == 0


def test_help_is_there() -> None:
    result = reading("--help")
    assert result.exit_code == 0
    assert "--age-band" in result.stdout
