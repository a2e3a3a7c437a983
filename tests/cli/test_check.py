"""``proofkit check`` from its options to its exit code; what is found is made by hand."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path

import pytest
from typer.testing import CliRunner, Result

from proofkit.cli.main import app
from proofkit.pipeline import Outcome
from proofkit.problem import Notice, Unusable
from proofkit.progress import Progress
from proofkit.report import Report
from proofkit.settings import Choices, English
from tests.reports.goat import SPREADS, book, goat, slips

QUERIES = slips(book(*SPREADS))[8:]
MISSING = Notice(text="The grammar engine did not start.", unchecked=True)


class FakePipeline:
    """Reports by the manuscript's name; what has none can't be read."""

    def __init__(self) -> None:
        self.reports: dict[str, Report] = {}
        self.problem: BaseException | None = None
        self.paths: tuple[Path, ...] = ()
        self.choices = Choices()

    def __call__(
        self, paths: Sequence[Path], asked: Choices, *, progress: Progress, memory: object
    ) -> Iterator[Outcome]:
        del memory
        self.paths, self.choices = tuple(paths), asked
        for number, path in enumerate(paths):
            progress("Reading", number, len(paths))
            if self.problem:
                raise self.problem
            report = self.reports.get(path.name)
            problem = None if report else f"{path.name} can't be read."
            yield Outcome(path=path, report=report, problem=problem)


@pytest.fixture
def pipeline(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> FakePipeline:
    fake = FakePipeline()
    monkeypatch.setattr("proofkit.cli.checking.check_manuscripts", fake)
    monkeypatch.setenv("PROOFKIT_CACHE", str(tmp_path / "cache"))
    fake.reports = {
        "goat.docx": goat(path="goat.docx"),
        "goat.odt": goat(path="goat.odt"),
        "clean.docx": goat(issues=(), path="clean.docx"),
        "asked.docx": goat(issues=QUERIES, path="asked.docx"),
        "half.docx": goat(issues=(), notices=(MISSING,), path="half.docx"),
    }
    return fake


def check(*arguments: str | Path) -> Result:
    return CliRunner().invoke(app, ["check", *map(str, arguments)])


@pytest.mark.parametrize(
    ("manuscripts", "code"),
    [
        (["clean.docx"], 0),
        (["asked.docx"], 0),
        (["goat.docx"], 1),
        (["clean.docx", "goat.docx", "asked.docx"], 1),
        (["half.docx"], 3),
        (["half.docx", "goat.docx"], 3),
        (["torn.docx"], 2),
        (["torn.docx", "half.docx", "goat.docx"], 2),
    ],
)
def test_the_exit_code_is_that_of_the_gravest(
    pipeline: FakePipeline, manuscripts: list[str], code: int
) -> None:
    assert check(*manuscripts).exit_code == code
    assert len(pipeline.paths) == len(manuscripts)


@pytest.mark.usefixtures("pipeline")
def test_into_a_pipe_the_table_is_plain() -> None:
    result = check("goat.docx")
    assert result.stdout.startswith("The Lighthouse Goat: 196 words on 10 spreads")
    assert "2\terror\tspread 2\t" in result.stdout
    assert "\x1b" not in result.output


@pytest.mark.usefixtures("pipeline")
def test_several_tables_follow_one_another_under_their_files_names() -> None:
    out = check("goat.docx", "clean.docx").stdout
    assert out.index("== goat.docx ==") < out.index("== clean.docx ==")


@pytest.mark.usefixtures("pipeline")
def test_a_manuscript_that_cannot_be_read_stops_no_other() -> None:
    result = check("torn.docx", "goat.docx")
    assert result.stderr == "torn.docx can't be read.\n"
    assert "The Lighthouse Goat" in result.stdout


@pytest.mark.usefixtures("pipeline")
def test_json_of_one_manuscript_is_an_object_and_of_several_an_array() -> None:
    one = json.loads(check("goat.docx", "--format", "json").stdout)
    assert one["manuscript"]["path"] == "goat.docx"
    several = json.loads(check("goat.docx", "clean.docx", "torn.docx", "--format", "json").stdout)
    assert [report["manuscript"]["path"] for report in several] == ["goat.docx", "clean.docx"]


@pytest.mark.usefixtures("pipeline")
def test_csv_of_several_manuscripts_is_one_table() -> None:
    out = check("goat.docx", "asked.docx", "--format", "csv").stdout
    rows = list(csv.DictReader(io.StringIO(out)))
    assert [row["manuscript"] for row in rows] == ["goat.docx"] * 10 + ["asked.docx"] * 2


@pytest.mark.usefixtures("pipeline")
def test_into_a_folder_goes_one_report_for_each_manuscript(tmp_path: Path) -> None:
    folder = tmp_path / "reports"
    result = check("goat.docx", "clean.docx", "--format", "json", "--output", folder)
    assert names(folder) == ["clean.json", "goat.json"]
    assert json.loads((folder / "goat.json").read_bytes())["manuscript"]["path"] == "goat.docx"
    assert (
        "goat.docx: 8 errors to mend, 2 queries to think about. The report is in" in result.stdout
    )
    assert result.exit_code == 1


@pytest.mark.usefixtures("pipeline")
def test_manuscripts_of_one_stem_keep_their_endings(tmp_path: Path) -> None:
    check("goat.docx", "goat.odt", "clean.docx", "--format", "csv", "--output", tmp_path / "out")
    assert names(tmp_path / "out") == ["clean.csv", "goat.docx.csv", "goat.odt.csv"]


def test_manuscripts_of_one_name_are_refused_before_the_work(
    pipeline: FakePipeline, tmp_path: Path
) -> None:
    result = check("a/goat.docx", "b/goat.docx", "--output", tmp_path / "out")
    assert result.exit_code == 2
    assert "would both be called goat" in result.stderr
    assert pipeline.paths == ()


@pytest.mark.usefixtures("pipeline")
@pytest.mark.parametrize(
    ("arguments", "name", "start"),
    [
        (["--output", "slip.json"], "slip.json", "{"),
        (["--output", "slip.csv"], "slip.csv", "\ufeffmanuscript,"),
        (["--output", "slip.txt"], "slip.txt", "The Lighthouse Goat"),
        (["--output", "slip.txt", "--format", "json"], "slip.txt", "{"),
        (["--output", "proof.html"], "proof.html", "<!DOCTYPE html>"),
        (["--output", "out/", "--format", "html"], "out/goat.proof.html", "<!DOCTYPE html>"),
        (["--output", "out/"], "out/goat.json", "{"),
        (["--output", ".", "--format", "table"], "goat.report.txt", "The Lighthouse Goat"),
    ],
)
def test_the_format_is_the_one_asked_for_or_told_by_the_files_ending(
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    arguments: list[str],
    name: str,
    start: str,
) -> None:
    monkeypatch.chdir(tmp_path)
    assert check("goat.docx", *arguments).exit_code == 1
    assert (tmp_path / name).read_text(encoding="utf-8").startswith(start)


def test_a_marked_proof_needs_a_place_to_go_to(pipeline: FakePipeline) -> None:
    result = check("goat.docx", "--format", "html")
    assert result.exit_code == 2
    assert "--output goat.proof.html" in result.stderr
    assert pipeline.paths == ()


@pytest.mark.usefixtures("pipeline")
def test_a_table_in_a_file_is_set_out_without_colour_or_trailing_spaces(tmp_path: Path) -> None:
    check("goat.docx", "--output", tmp_path / "slip.txt")
    text = (tmp_path / "slip.txt").read_text(encoding="utf-8")
    assert "Errors to mend\n   1  spread 4  " in text
    assert "\x1b" not in text
    assert not [line for line in text.splitlines() if line != line.rstrip() or len(line) > 100]


def test_a_report_never_goes_over_a_manuscript(pipeline: FakePipeline, tmp_path: Path) -> None:
    manuscript = tmp_path / "goat.docx"
    manuscript.write_bytes(b"the only copy")
    result = check(manuscript, "--format", "json", "--output", manuscript)
    assert result.exit_code == 2
    assert "never writes over one" in result.stderr
    assert manuscript.read_bytes() == b"the only copy"
    assert pipeline.paths == ()


def test_a_manuscript_named_twice_is_checked_once(pipeline: FakePipeline) -> None:
    check("goat.docx", "goat.docx", "--format", "json")
    assert pipeline.paths == (Path("goat.docx"),)


@pytest.mark.usefixtures("pipeline")
def test_fewer_rows_are_shown_where_fewer_are_asked_for() -> None:
    assert "6 more rows held back" in check("goat.docx", "--limit", "4").stdout
    assert "held back" not in check("goat.docx", "--limit", "0").stdout
    assert check("goat.docx", "--limit", "-1").exit_code == 2


@pytest.mark.parametrize(
    ("arguments", "choices"),
    [
        ([], Choices()),
        (["--english", "auto"], Choices()),
        (["--english", "american"], Choices(english=English.AMERICAN)),
        (["--age-band", "chapter"], Choices(age_band="chapter")),
        (
            ["--grammar-server", "http://localhost:81"],
            Choices(grammar_server="http://localhost:81"),
        ),
    ],
)
def test_what_is_asked_for_arrives(
    pipeline: FakePipeline, arguments: list[str], choices: Choices
) -> None:
    check("goat.docx", *arguments)
    assert pipeline.choices == choices


@pytest.mark.usefixtures("pipeline")
@pytest.mark.parametrize(
    "arguments", [[], ["goat.docx", "--format", "pdf"], ["goat.docx", "--english", "welsh"]]
)
def test_a_command_that_cannot_be_understood_ends_with_2(arguments: Iterable[str]) -> None:
    assert check(*arguments).exit_code == 2


@pytest.mark.parametrize(
    ("problem", "code", "sentence"),
    [
        (KeyboardInterrupt(), 130, "Stopped. Your manuscript is as it was"),
        (Unusable("There is no age band called “goat”."), 2, "There is no age band called “goat”."),
        (ZeroDivisionError("by nought"), 2, "ZeroDivisionError: by nought (test_check.py, line"),
        (OSError(28, "No space left on device"), 2, "No space left on device"),
    ],
)
def test_whatever_goes_wrong_is_one_sentence(
    pipeline: FakePipeline, problem: BaseException, code: int, sentence: str
) -> None:
    pipeline.problem = problem
    result = check("goat.docx")
    assert result.exit_code == code
    assert sentence in result.stderr
    assert len(result.stderr.splitlines()) == 1
    assert "Traceback" not in result.output


def names(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())
