from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from typer.testing import CliRunner, Result

from proofkit.cli.beginning import Request, begin_book
from proofkit.cli.guard import Exit
from proofkit.cli.main import app
from proofkit.problem import Unusable
from proofkit.settings import Choices, English, settings_for

Answering = Callable[..., list[str]]


@pytest.fixture(autouse=True)
def cache(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PROOFKIT_CACHE", str(tmp_path_factory.mktemp("cache")))
    monkeypatch.setenv("COLUMNS", "500")


@pytest.fixture
def answering(monkeypatch: pytest.MonkeyPatch) -> Answering:
    """A terminal in which these answers are typed; it gives the questions back."""

    def answer(*answers: str) -> list[str]:
        questions: list[str] = []
        waiting: Iterator[str] = iter(answers)

        def typed(question: str) -> str:
            questions.append(question)
            try:
                return next(waiting)
            except StopIteration:
                raise EOFError from None

        monkeypatch.setattr(sys.stdin, "isatty", lambda: True)
        monkeypatch.setattr(sys.stdout, "isatty", lambda: True)
        monkeypatch.setattr("builtins.input", typed)
        return questions

    return answer


def begin(*arguments: str | Path) -> Result:
    return CliRunner().invoke(app, ["begin", *map(str, arguments)])


def test_where_nobody_can_be_asked_the_usual_is_taken(tmp_path: Path) -> None:
    result = begin(tmp_path)
    assert result.exit_code == 0
    assert str(tmp_path / "proofkit.toml") in result.stdout
    found = settings_for(tmp_path / "goose.docx", Choices())
    assert (found.title, found.english, found.age_band) == ("", None, "picture")


def test_what_is_given_is_written_in_words_to_read_and_edit(tmp_path: Path) -> None:
    title = 'The "Big" Goose \\ Moon'
    begin(tmp_path, "--title", title, "--age-band", "early-reader", "--english", "american")
    found = settings_for(tmp_path / "goose.docx", Choices())
    assert (found.title, found.english, found.age_band) == (
        title,
        English.AMERICAN,
        "early-reader",
    )
    text = (tmp_path / "proofkit.toml").read_text(encoding="utf-8")
    assert "# board, picture, early-reader, chapter, middle-grade" in text
    (tmp_path / "proofkit.toml").write_text(text.replace("# [style]", "[style]"), encoding="utf-8")
    assert settings_for(tmp_path / "goose.docx", Choices()).style.names == ()


def test_the_examples_in_the_file_are_ones_that_work(tmp_path: Path) -> None:
    from proofkit.rulings.decisions import decided_for  # noqa: PLC0415 - this test alone

    begin(tmp_path)
    file = tmp_path / "proofkit.toml"
    text = file.read_text(encoding="utf-8")
    at = text.index("# [style]")
    file.write_text(text[:at] + text[at:].replace("# ", ""), encoding="utf-8")
    style = decided_for(tmp_path / "goose.docx", Choices()).settings.style
    assert style.form("dash") == "spaced en rule"
    assert style.names
    assert style.words


def test_what_is_there_already_is_left_as_it_is(tmp_path: Path) -> None:
    file = tmp_path / "proofkit.toml"
    file.write_text("english = ", encoding="utf-8")
    result = begin(tmp_path, "--title", "x")
    assert result.exit_code == 2
    assert f"{file} is there already, and was left as it is." in result.stderr
    assert file.read_text(encoding="utf-8") == "english = "


@pytest.mark.parametrize(
    ("folder", "options", "said"),
    [
        ("nowhere", (), "There is no folder"),
        ("goose.docx", (), "is a file. Name the folder that it is in."),
        (".", ("--age-band", "teen"), "teen"),
        (".", ("--english", "welsh"), "welsh"),
    ],
)
def test_what_cannot_be_is_said_and_nothing_is_written(
    tmp_path: Path, folder: str, options: tuple[str, ...], said: str
) -> None:
    (tmp_path / "goose.docx").touch()
    result = begin(tmp_path / folder, *options)
    assert result.exit_code == 2
    assert said in result.stderr
    assert not (tmp_path / "proofkit.toml").exists()


def test_in_a_window_what_is_not_given_is_asked_for(
    tmp_path: Path, answering: Answering, capsys: pytest.CaptureFixture[str]
) -> None:
    questions = answering(" The Goose ", "sausage", "chap", "")
    assert begin_book(Request(folder=tmp_path)) is Exit.CLEAN
    found = settings_for(tmp_path / "goose.docx", Choices())
    assert (found.title, found.english, found.age_band) == ("The Goose", None, "chapter")
    assert len(questions) == 4
    out = capsys.readouterr().out
    assert "Whom is it for?\n  board, 0 to 3\n  picture, 3 to 6\n" in out
    assert "“sausage” is none of these." in out
    assert out.index("Whom") < out.index("Which English")


def test_what_is_given_is_not_asked_for(tmp_path: Path, answering: Answering) -> None:
    questions = answering()
    begin_book(Request(folder=tmp_path, title="x", age_band="board", english="british"))
    assert questions == []


def test_an_author_who_stops_answering_gets_the_usual(tmp_path: Path, answering: Answering) -> None:
    answering("The Goose")
    begin_book(Request(folder=tmp_path))
    found = settings_for(tmp_path / "goose.docx", Choices())
    assert (found.title, found.age_band) == ("The Goose", "picture")


def test_nothing_is_asked_where_the_file_is_there(tmp_path: Path, answering: Answering) -> None:
    questions = answering("x")
    (tmp_path / "proofkit.toml").touch()
    with pytest.raises(Unusable):
        begin_book(Request(folder=tmp_path))
    assert questions == []
