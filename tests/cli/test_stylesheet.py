"""``proofkit stylesheet`` from its options to its exit code; the sheet is made by hand."""

from __future__ import annotations

import json
import os
from datetime import date
from pathlib import Path

import pytest
from docx import Document
from typer.testing import CliRunner, Result

from proofkit.cli.main import app
from proofkit.problem import Notice, Unusable
from proofkit.progress import Progress
from proofkit.stylesheet.sheet import StyleSheet
from tests.cli.test_main import proofkit_run
from tests.reports.stylesheet.lantern import lantern


class FakeSheets:
    """The lantern's sheet for whatever manuscript is named."""

    def __init__(self) -> None:
        self.sheet = lantern()
        self.problem: BaseException | None = None
        self.asked: list[Path] = []

    def __call__(self, path: Path, *, memory: object, made: date, progress: Progress) -> StyleSheet:
        del memory, made
        self.asked.append(path)
        progress("Reading", 0, 1)
        if self.problem:
            raise self.problem
        return self.sheet


@pytest.fixture
def sheets(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> FakeSheets:
    fake = FakeSheets()
    monkeypatch.setattr("proofkit.cli.sheeting.style_sheet", fake)
    monkeypatch.setenv("PROOFKIT_CACHE", str(tmp_path / "cache"))
    monkeypatch.chdir(tmp_path)
    return fake


def stylesheet(*arguments: str | Path) -> Result:
    return CliRunner().invoke(app, ["stylesheet", *map(str, arguments)])


@pytest.mark.usefixtures("sheets")
def test_into_a_pipe_the_table_is_plain() -> None:
    result = stylesheet("lantern.docx")
    assert result.exit_code == 0
    assert "Mr Wick\tmostly (3 of 4)\tspread 2\tspread 4\t" in result.stdout
    assert "\x1b" not in result.output


@pytest.mark.usefixtures("sheets")
@pytest.mark.parametrize(
    ("arguments", "name", "start"),
    [
        (["--output", "s.json"], "s.json", b"{"),
        (["--output", "s.md"], "s.md", b"# The Last Lantern"),
        (["--output", "s.docx"], "s.docx", b"PK"),
        (["--output", "s.txt"], "s.txt", b"The Last Lantern: style sheet"),
        (["--output", "s.txt", "--format", "md"], "s.txt", b"# The"),
        (["--output", "out/"], "out/lantern.stylesheet.docx", b"PK"),
        (["--output", "out/", "--format", "json"], "out/lantern.stylesheet.json", b"{"),
        (["--output", ".", "--format", "table"], "lantern.stylesheet.txt", b"The Last"),
    ],
)
def test_the_form_is_the_one_asked_for_or_told_by_the_files_ending(
    tmp_path: Path, arguments: list[str], name: str, start: bytes
) -> None:
    result = stylesheet("lantern.docx", *arguments)
    assert result.exit_code == 0, result.output
    assert (tmp_path / name).read_bytes().startswith(start)
    said = "lantern.docx: 5 rows, 1 open question. The style sheet is in "
    assert result.stdout == f"{said}{Path(name)}\n"


@pytest.mark.usefixtures("sheets")
def test_every_form_can_go_into_a_pipe() -> None:
    assert stylesheet("lantern.docx", "--format", "md").stdout.startswith("# The Last Lantern\n")
    read = json.loads(stylesheet("lantern.docx", "--format", "json").stdout)
    assert read["title"] == "The Last Lantern"
    assert stylesheet("lantern.docx", "--format", "word").stdout_bytes.startswith(b"PK")


@pytest.mark.parametrize("name", ["lantern.docx", "notes.docx", "notes.md", "notes.txt"])
def test_nothing_of_the_authors_is_written_over(sheets: FakeSheets, name: str) -> None:
    Path(name).write_bytes(b"the only copy")
    result = stylesheet("lantern.docx", "--output", name)
    assert result.exit_code == 2
    assert "Give the style sheet another name" in result.stderr
    assert Path(name).read_bytes() == b"the only copy"
    assert sheets.asked == []


@pytest.mark.skipif(os.name != "posix" or os.geteuid() == 0, reason="root may write anywhere")
def test_a_folder_that_cannot_be_written_to_is_named_before_the_work(
    sheets: FakeSheets, tmp_path: Path
) -> None:
    closed = tmp_path / "closed"
    closed.mkdir(mode=0o555)
    result = stylesheet("lantern.docx", "--output", closed / "s.md")
    assert result.exit_code == 2
    assert "can't be written to. Choose another one for the style sheet." in result.stderr
    assert sheets.asked == []


def test_a_folder_that_is_not_there_is_named_before_the_work(sheets: FakeSheets) -> None:
    result = stylesheet("lantern.docx", "--output", "nowhere/s.md")
    assert result.exit_code == 2
    assert "to write the style sheet to" in result.stderr
    assert sheets.asked == []


def test_a_sheet_that_lacks_something_says_so_and_ends_with_3(sheets: FakeSheets) -> None:
    sheets.sheet = lantern(notices=(Notice(text="The language model failed.", unchecked=True),))
    result = stylesheet("lantern.docx", "--output", "s.docx")
    assert result.exit_code == 3
    assert "Note: The language model failed." in [p.text for p in Document("s.docx").paragraphs]


@pytest.mark.parametrize(
    ("problem", "code", "sentence"),
    [
        (Unusable("There is no file “lantern.docx”."), 2, "There is no file “lantern.docx”."),
        (KeyboardInterrupt(), 130, "Stopped. Your manuscript is as it was"),
    ],
)
def test_whatever_goes_wrong_is_one_sentence_and_leaves_no_file(
    sheets: FakeSheets, problem: BaseException, code: int, sentence: str
) -> None:
    sheets.problem = problem
    result = stylesheet("lantern.docx", "--output", "s.docx")
    assert result.exit_code == code
    assert sentence in result.stderr
    assert len(result.stderr.splitlines()) == 1
    assert not Path("s.docx").exists()


@pytest.mark.usefixtures("sheets")
@pytest.mark.parametrize("arguments", [[], ["a.docx", "b.docx"], ["a.docx", "--format", "pdf"]])
def test_a_command_that_cannot_be_understood_ends_with_2(arguments: list[str]) -> None:
    assert stylesheet(*arguments).exit_code == 2


def test_its_help_waits_for_no_library() -> None:
    heavy = ("spacy", "docx", "rich", "msgspec", "lxml")
    ask = f"import atexit; atexit.register(lambda: print([m for m in {heavy} if m in sys.modules])); run()"
    result = proofkit_run("stylesheet", "--help", before=ask)
    assert result.returncode == 0
    assert result.stdout.decode().rstrip().endswith("[]")
