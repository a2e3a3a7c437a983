"""``proofkit drafts`` from its options to its exit code."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from typer.testing import CliRunner, Result

from proofkit.cli.main import app
from proofkit.drafts.ledger import record, summaries
from tests.drafts.goat_drafts import draft
from tests.reports.goat import SPREADS


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    book = tmp_path / "goat"
    book.mkdir()
    (book / "proofkit.toml").write_text('title = "The Lighthouse Goat"\n')
    record(book / "proofkit.db", draft())
    record(book / "proofkit.db", draft("the the", day=1, file="goat v2.docx"))
    monkeypatch.chdir(book)
    return book


def run(*arguments: str | Path) -> Result:
    return CliRunner().invoke(app, ["drafts", *map(str, arguments)])


def test_a_folder_a_manuscript_in_it_or_nothing_names_the_book(folder: Path) -> None:
    (folder / "goat.docx").touch()
    told = {run(*named).stdout for named in ([], [folder], ["."], [folder / "goat.docx"])}
    assert len(told) == 1
    assert "errors 6 → 5" in told.pop()


def test_options_may_come_first(folder: Path) -> None:
    assert len(json.loads(run("--format", "json").stdout)["drafts"]) == 2
    assert len(json.loads(run("--format", "json", folder).stdout)["drafts"]) == 2


@pytest.mark.parametrize(
    ("name", "begins"), [("d.json", "{"), ("d.csv", "\ufeffnumber"), ("d.report.txt", "The L")]
)
def test_a_files_ending_tells_the_format(folder: Path, name: str, begins: str) -> None:
    result = run("--output", folder / name)
    assert (result.exit_code, (folder / name).read_text("utf-8")[: len(begins)]) == (0, begins)
    assert "2 drafts listed in" in result.stdout


def test_the_list_is_never_written_over_a_text(folder: Path) -> None:
    (folder / "goat.docx").write_text("the manuscript")
    for output in ("goat.docx", "proofkit.db"):
        result = run("--output", output)
        assert result.exit_code == 2
    assert (folder / "goat.docx").read_text() == "the manuscript"
    assert len(summaries(folder / "proofkit.db")) == 2


def test_what_is_not_there_is_said(folder: Path, tmp_path: Path) -> None:
    assert "There is no file or folder nowhere" in run("nowhere").stderr
    (tmp_path / "empty").mkdir()
    result = run(tmp_path / "empty")
    assert result.exit_code == 2
    assert "no ledger of drafts" in result.stderr


def test_to_another_computer_and_back(folder: Path, tmp_path: Path) -> None:
    assert "proofkit drafts import all.json" in run("export", "all.json").stdout
    other = tmp_path / "other"
    other.mkdir()
    refused = run("import", "all.json", "--book", other)
    assert refused.exit_code == 2
    assert "proofkit begin" in refused.stderr
    assert list(other.iterdir()) == []
    (other / "proofkit.toml").write_text("")
    assert "2 drafts brought in" in run("import", "all.json", "--book", other).stdout
    assert (
        "0 drafts brought in; 2 were here already"
        in run("import", "all.json", "--book", other).stdout
    )
    assert summaries(other / "proofkit.db") == summaries(folder / "proofkit.db")


def test_a_damaged_ledger_is_said_and_left_for_the_next_check(folder: Path) -> None:
    (folder / "proofkit.db").write_bytes(b"spoilt " * 1000)
    result = run()
    assert result.exit_code == 2
    assert "damaged" in result.stderr
    assert "Traceback" not in result.stderr
    assert (folder / "proofkit.db").read_bytes() == b"spoilt " * 1000


def test_help_names_the_commands() -> None:
    told = run("--help").stdout
    assert all(word in told for word in ("export", "import", "proofkit.db"))


def test_two_drafts_are_compared_by_number_date_or_file(folder: Path) -> None:
    told = {
        run("compare", *named).stdout
        for named in (
            ("1", "2"),
            ("2", "1"),
            ("2026-09-01", "2026-09-02"),
            ("Goat v1.docx", "goat v2.docx"),
            (folder / "Goat v1.docx", "2"),
        )
    }
    assert len(told) == 1
    lines = told.pop().splitlines()
    cut = lines.pop(5)  # which of two equal words was cut nobody can tell
    assert cut.startswith("  cut ›the‹ (… ")
    assert lines == [
        "The Lighthouse Goat: draft 1 (2026-09-01) and draft 2 (2026-09-02)",
        "Words 196 → 195, errors 6 → 5, queries 1 → 1",
        "1 spread changed",
        "",
        "spread 2",
        "",
        "No longer in draft 2",
        "  fixed: spread 2, ›the the‹, read the",
    ]


def test_what_came_with_a_change_is_told_from_what_did_not(folder: Path) -> None:
    more = (*SPREADS[:2], "Clip-clop. " + SPREADS[3], *SPREADS[4:], "Nell saw a a ship.")
    record(folder / "proofkit.db", draft("the the", day=2, spreads=more))
    lines = run("compare", "2", "3").stdout.splitlines()
    assert "spread 10: put in" in lines
    assert "spread 3: taken out" in " ".join(lines)
    assert "  gone with the text: spread 3, ›bucket .‹, read bucket." in lines


@pytest.mark.parametrize(
    ("asked", "said"), [(("1", "7"), "No draft has"), (("1", "Goat v1.docx"), "one and the same")]
)
def test_what_can_not_be_compared_is_said(folder: Path, asked: tuple[str, str], said: str) -> None:
    result = run("compare", *asked)
    assert result.exit_code == 2
    assert said in result.stderr


def test_a_text_that_is_the_same_in_both_is_said_to_be(folder: Path) -> None:
    record(folder / "proofkit.db", draft("the the", day=2, age_band="board"))
    assert "The text is the same in both." in run("compare", "2", "3").stdout


def test_under_the_list_stands_where_slips_hide(folder: Path) -> None:
    later = (*SPREADS[:9], "Far, far away a little boat turned, and came safely home.")
    record(folder / "proofkit.db", draft("the the", day=40, spreads=later))
    told = run().stdout.splitlines()
    assert "Unchanged since the first draft, and known by heart: spreads 1 and 3–9." in told
    line = "Changed in the newest draft after nothing was left to mend there: spread 10."
    assert line in told
