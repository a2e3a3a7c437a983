"""``proofkit stet`` on a manuscript in which one check finds every goat."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from typer.testing import CliRunner, Result

from proofkit import pipeline
from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Check, Need
from proofkit.cli.main import app
from proofkit.engines import analyse
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings

CHECK = "spacing/two-spaces"  # one that there is
STORY = """Page 1

The goat climbed the hill and looked at the sea. It was a good hill to look from.

Page 2

Then the goat saw a boat on the sea, and in the boat there was another goat.
"""


def every_goat(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    for page in book.pages:
        for at in re.finditer("goat", page.prose):
            yield issue_at(
                book,
                page.span(*at.span()),
                check=CHECK,
                tier=Tier.ERROR,
                message="a goat",
                confidence=0.9,
                suggestions=["sheep"],
            )


@pytest.fixture
def manuscript(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    goats = Check(name=CHECK, needs=frozenset({Need.TEXT}), find=every_goat, handbook="")
    monkeypatch.setattr(pipeline, "all_checks", lambda: (goats,))
    monkeypatch.setattr(
        analyse.Analyst, "ask", lambda *_: None
    )  # a check of the text needs no engine
    monkeypatch.setenv("PROOFKIT_CACHE", str(tmp_path / "cache"))
    monkeypatch.setenv("COLUMNS", "500")
    folder = tmp_path / "book"
    folder.mkdir()
    path = folder / "goat one.txt"
    path.write_text(STORY, encoding="utf-8")
    return path


def proofkit(*arguments: str | Path) -> Result:
    return CliRunner().invoke(app, [*map(str, arguments)])


def keys(manuscript: Path) -> list[str]:
    report = json.loads(proofkit("check", manuscript, "--format", "json").stdout)
    return [issue["key"] for issue in report["issues"]]


def own(manuscript: Path) -> Path:
    return manuscript.with_name("proofkit.toml")


def test_a_row_stands_in_this_draft_and_the_next(
    manuscript: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    first, second, third = keys(manuscript)
    monkeypatch.setattr(analyse, "Analyst", None)  # a ruling asks no engine again
    result = proofkit("stet", manuscript, second[:4], "--because", "he is one")
    assert result.exit_code == 0
    assert "Let stand: Then the ›goat‹ saw a boat" in result.stdout
    assert "(page 2; a goat)" in result.stdout
    assert f'proofkit check "{manuscript}" --show-stet' in result.stdout
    assert keys(manuscript) == [first, third]
    text = own(manuscript).read_text(encoding="utf-8")
    assert 'because = "he is one"' in text
    assert 'page = "page 2"' in text


def test_the_next_draft_shows_what_is_new_or_open(manuscript: Path) -> None:
    first, second, _third = keys(manuscript)
    proofkit("stet", manuscript, first, second)
    draft = manuscript.with_name("goat two.txt")
    mended = STORY.replace("another goat", "another sheep")
    draft.write_text(mended.replace("The goat climbed", "A new goat. The goat climbed"), "utf-8")
    report = json.loads(proofkit("check", draft, "--format", "json").stdout)
    assert [issue["start"] for issue in report["issues"]] == [6]
    assert [each["issue"]["page"] for each in report["let_stand"]] == [1, 2]


def test_errors_that_stand_leave_the_exit_code_clean(manuscript: Path) -> None:
    assert proofkit("check", manuscript).exit_code == 1
    assert proofkit("stet", manuscript, *keys(manuscript)).exit_code == 0
    result = proofkit("check", manuscript)
    assert result.exit_code == 0
    assert "No errors to mend, no queries to think about; 3 let stand earlier" in result.stdout
    assert "›goat‹" not in result.stdout
    assert "3 rows let stand. To see what: proofkit check" in result.stdout
    assert proofkit("check", manuscript, "--show-stet").stdout.count("\tstet\t") == 3


def test_show_stet_reaches_a_file_too(manuscript: Path, tmp_path: Path) -> None:
    proofkit("stet", manuscript, keys(manuscript)[0], "--because", "he is one")
    proofkit("check", manuscript, "--show-stet", "--output", tmp_path / "slip.txt")
    assert "let stand: he is one" in (tmp_path / "slip.txt").read_text(encoding="utf-8")


def test_what_stands_already_is_said_and_nothing_is_written(manuscript: Path) -> None:
    first, second, _third = keys(manuscript)
    proofkit("stet", manuscript, first)
    before = own(manuscript).read_bytes()
    result = proofkit("stet", manuscript, first[:5])
    assert (result.exit_code, result.stdout.startswith("Stands already: The ›goat‹")) == (0, True)
    assert own(manuscript).read_bytes() == before
    result = proofkit("stet", manuscript, first, second)
    assert [line.partition(":")[0] for line in result.stdout.splitlines()][:2] == [
        "Stands already",
        "Let stand",
    ]


@pytest.mark.parametrize(
    ("key", "said"),
    [
        ("zzzz", "has the key “zzzz”. Its rows and their keys: proofkit check "),
        ("3", "“3” is too short for a key"),
        ("spacing/two-space", "Did you mean spacing/two-spaces"),
        ("nothing/at-all", "There is no check called “nothing/at-all”."),
    ],
)
def test_a_key_that_names_nothing_costs_the_others_too(
    manuscript: Path, key: str, said: str
) -> None:
    result = proofkit("stet", manuscript, keys(manuscript)[0], key)
    assert result.exit_code == 2
    assert said in result.stderr
    assert len(result.stderr.splitlines()) == 1
    assert not own(manuscript).exists()


def test_letters_that_begin_two_keys_are_not_guessed_at(
    manuscript: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("proofkit.issue.key_of", lambda matter, _count: f"bcdf{len(matter):03}")
    names = keys(manuscript)
    assert len(set(names)) == 3
    result = proofkit("stet", manuscript, "bcdf")
    assert result.exit_code == 2
    assert f"3 keys: {' or '.join(names)}" in result.stderr
    assert proofkit("stet", manuscript, names[0]).exit_code == 0


def test_a_whole_check_stands(manuscript: Path) -> None:
    result = proofkit("stet", manuscript, CHECK, "--because", "goats are fine")
    assert result.stdout.startswith(f"Let stand: all that {CHECK} finds (3 rows in this draft)")
    assert keys(manuscript) == []
    assert proofkit("stet", manuscript, CHECK).stdout.startswith("Stands already: all that")


def test_a_ruling_that_matches_nothing_is_said_with_its_line(manuscript: Path) -> None:
    own(manuscript).write_text('# mine\n[[stet]]\nword = "gonna"\n', encoding="utf-8")
    out = proofkit("check", manuscript).stdout
    assert "Note: The ruling on line 2 of proofkit.toml no longer matches anything" in out


@pytest.mark.parametrize("broken", ['english = "br\n', "[[stet]]\n", "[style]\nmoon = 'x'\n"])
def test_a_broken_file_is_named_with_its_line_and_left_as_it_is(
    manuscript: Path, broken: str
) -> None:
    key = keys(manuscript)[0]
    own(manuscript).write_text(broken, encoding="utf-8")
    for command in (("check", manuscript), ("stet", manuscript, key)):
        result = proofkit(*command)
        assert result.exit_code == 2
        assert re.search(r"proofkit\.toml.*line \d", result.stderr)
    assert own(manuscript).read_text(encoding="utf-8") == broken


def test_a_manuscript_that_is_not_there_is_named(manuscript: Path) -> None:
    result = proofkit("stet", manuscript.with_name("sheep.txt"), "bcdf")
    assert (result.exit_code, "sheep.txt" in result.stderr) == (2, True)


def test_the_authors_title_is_the_reports(manuscript: Path) -> None:
    own(manuscript).write_text('title = "The Goat and the Boat"\n', encoding="utf-8")
    assert proofkit("check", manuscript).stdout.startswith("The Goat and the Boat: ")
