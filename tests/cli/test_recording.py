"""``proofkit check`` in a book's folder: each text is a draft, and the report says what changed."""

from __future__ import annotations

import json
import shutil
from collections.abc import Iterator, Sequence
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator  # type: ignore[import-untyped]  # has no types
from typer.testing import CliRunner, Result

from examples.make_examples import HERE, NAME
from proofkit.cli.main import app
from proofkit.drafts.ledger import summaries
from proofkit.pipeline import Outcome
from proofkit.rulings.ruling import Ruling
from proofkit.settings import Settings
from tests.drafts.goat_drafts import SLIPS, report_on

# Which slips each manuscript has mended.
MANUSCRIPTS = {
    "goat.docx": (),
    "goat v2.docx": ("the the", "in form"),
    "Goat v3 FINAL (2).odt": ("in form", "Mister"),
    "clean.docx": tuple(wrong for wrong, *_ in SLIPS),
}


@pytest.fixture
def book(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A book's folder, in which what is found in each manuscript is made by hand."""

    def checked(paths: Sequence[Path], *_: object, **__: object) -> Iterator[Outcome]:
        for path in paths:
            report = report_on(*MANUSCRIPTS[path.name], file=str(path))
            yield Outcome(path=path, report=report, settings=Settings())

    monkeypatch.setattr("proofkit.cli.checking.check_manuscripts", checked)
    monkeypatch.setenv("PROOFKIT_CACHE", str(tmp_path / "cache"))
    folder = tmp_path / "book"
    folder.mkdir()
    (folder / "proofkit.toml").write_text("")
    return folder


def check(*arguments: str | Path) -> Result:
    return CliRunner().invoke(app, ["check", *map(str, arguments)])


def why(result: Result) -> list[str]:
    rows = [line.split("\t") for line in result.stdout.splitlines() if line.count("\t") == 7]
    return [row[5] for row in rows[1:]]


def test_the_first_draft_is_recorded_and_said_once(book: Path) -> None:
    told = check(book / "goat.docx").stdout
    assert "Note: This is the first draft of the book in its ledger, proofkit.db." in told
    assert "Since draft" not in told
    again = check(book / "goat.docx").stdout
    assert "first draft" not in again
    assert len(summaries(book / "proofkit.db")) == 1


def test_the_next_draft_begins_with_what_changed_and_marks_what_is_new(book: Path) -> None:
    check(book / "goat.docx")
    check(book / "goat v2.docx")
    result = check(book / "Goat v3 FINAL (2).odt")
    lines = result.stdout.splitlines()
    assert lines[1] == ("Since draft 2, the same day, errors 4 → 5: 1 back again, 4 still there")
    assert sorted(why(result))[0] == "back again: read the"
    assert sum(reason.startswith(("new:", "back again:")) for reason in why(result)) == 1
    assert check(book / "Goat v3 FINAL (2).odt").stdout == result.stdout


def test_new_only_lists_just_that(book: Path) -> None:
    check(book / "goat v2.docx")
    result = check(book / "goat.docx", "--new-only")
    assert sorted(why(result)) == ["new: read in from", "new: read the"]
    assert "Only what is new or back again is listed: 2 errors to mend, no queries" in result.stdout
    told = json.loads(check(book / "goat.docx", "--new-only", "--format", "json").stdout)
    assert {issue["quote"] for issue in told["issues"]} == {"the the", "in form"}
    assert {issue["key"] for issue in told["issues"]} == set(told["since_last"]["new_keys"])


def test_without_an_earlier_draft_new_only_lists_all_and_says_why(book: Path) -> None:
    result = check(book / "goat.docx", "--new-only")
    assert len(why(result)) == len(SLIPS)
    assert "There is no earlier draft to compare with" in result.stdout


@pytest.mark.parametrize(
    ("options", "codes"), [((), [1, 1, 1, 0]), (("--mind-new",), [1, 0, 1, 0])]
)
def test_the_exit_code_can_mind_new_errors_alone(
    book: Path, options: tuple[str, ...], codes: list[int]
) -> None:
    assert [check(book / name, *options).exit_code for name in MANUSCRIPTS] == codes


def test_the_json_has_what_changed_as_its_schema_documents(book: Path) -> None:
    check(book / "goat.docx")
    told = json.loads(check(book / "goat v2.docx", "--format", "json").stdout)
    schema = json.loads(
        (Path(__file__).parents[2] / "proofkit/reports/report.schema.json").read_text("utf-8")
    )
    Draft202012Validator(schema).validate(told)
    since = told["since_last"]
    assert (since["last"], since["errors"], since["fixed"], since["still_there"]) == (1, 6, 2, 4)


def test_in_no_books_folder_nothing_is_kept(book: Path) -> None:
    (book / "proofkit.toml").unlink()
    told = json.loads(check(book / "goat.docx", "--format", "json").stdout)
    assert told["since_last"] is None
    assert list(book.iterdir()) == []


def test_the_check_never_fails_because_of_its_ledger(book: Path) -> None:
    (book / "proofkit.db").mkdir()
    result = check(book / "goat.docx")
    assert result.exit_code == 1
    assert len(why(result)) == len(SLIPS)
    assert "Note: The ledger" in result.stdout
    assert "This draft was not recorded." in result.stdout


def test_several_manuscripts_are_drafts_in_the_order_they_are_named(book: Path) -> None:
    check(*(book / name for name in MANUSCRIPTS))
    assert [Path(each.file).name for each in summaries(book / "proofkit.db")] == list(MANUSCRIPTS)
    check(*(book / name for name in MANUSCRIPTS))
    assert len(summaries(book / "proofkit.db")) == len(MANUSCRIPTS)


def state(path: Path) -> tuple[bytes, int, int]:
    return path.read_bytes(), path.stat().st_mtime_ns, path.stat().st_mode


@pytest.mark.engine
def test_a_manuscript_is_read_and_never_written(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "proofkit.toml").write_text("")
    names = [f"{NAME}.docx", f"{NAME}.odt", f"{NAME}.md"]
    for name in names:
        shutil.copy(HERE / name, tmp_path / name)
    before = {name: state(tmp_path / name) for name in names}
    for command in (
        ["check", *names],
        ["check", names[0], "--new-only", "--show-stet"],
        ["stet", names[0], "repetition/doubled-word"],
        ["check", names[0], "--mind-new", "--format", "json"],
        ["drafts", names[0]],
        ["drafts", ".", "--format", "csv"],
        ["drafts", "export", "all.json"],
        ["drafts", "import", "all.json"],
    ):
        result = CliRunner().invoke(app, command)
        assert result.exit_code in (0, 1), result.output
        assert {name: state(tmp_path / name) for name in names} == before
    recorded = summaries(tmp_path / "proofkit.db")
    assert len(recorded) == 2  # one text in three formats, then a ruling
    assert recorded[1].counts.let_stand == 1


def test_an_error_that_is_let_stand_now_is_said(
    book: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    check(book / "goat.docx")

    def ruled(paths: Sequence[Path], *_: object, **__: object) -> Iterator[Outcome]:
        for path in paths:
            rulings = (Ruling(at="proofkit.toml", check="grammar/its"),)
            report = report_on("the the", file=str(path), let_stand="grammar/its")
            yield Outcome(path=path, report=report, settings=Settings(), rulings=rulings)

    monkeypatch.setattr("proofkit.cli.checking.check_manuscripts", ruled)
    told = check(book / "goat v2.docx").stdout.splitlines()
    line = "Since draft 1, the same day, errors 6 → 4: 1 fixed, 1 let stand, 4 still there"
    assert line in told
    assert line in check(book / "goat v2.docx").stdout.splitlines()
