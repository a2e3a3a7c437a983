"""``proofkit handoff`` from its options to its exit code; what is found is made by hand."""

from __future__ import annotations

import io
import os
import shutil
import sys
import zipfile
from collections.abc import Callable, Iterator, Sequence
from datetime import date
from pathlib import Path

import pytest
from docx import Document
from typer.testing import CliRunner, Result

from examples.make_examples import HERE, NAME
from proofkit.book import Book
from proofkit.cli.main import app
from proofkit.issue import Issue, Tier, with_keys
from proofkit.pipeline import Outcome
from proofkit.problem import Notice
from proofkit.progress import Progress
from proofkit.ranking import ranked
from proofkit.readers.read import read
from proofkit.reading.measure import measure
from proofkit.report import Report, report_of
from proofkit.settings import Choices, English
from proofkit.stylesheet.sheet import StyleSheet
from proofkit.words.vocabulary import vocabulary_of
from tests.cli.test_main import proofkit_run
from tests.reports.goat import slip
from tests.reports.stylesheet.lantern import lantern
from tests.reports.word_files import paragraph, write

NAMES = [
    "1 Brief.docx",
    "2 otter.docx",
    "2 otter.html",
    "3 otter - open queries.docx",
    "4 Style sheet.docx",
    "5 Rulings.docx",
    "6 Words to confirm.docx",
    "7 Words per spread.docx",
    "8 Checklist.docx",
]


class FakePipeline:
    """The manuscript as it is, and in it a query at "creek" and, unless mended, an error at "the the"."""

    def __init__(self) -> None:
        self.mended = False
        self.notices: tuple[Notice, ...] = ()
        self.calls = 0
        self.then: Callable[[], object] = lambda: None

    def __call__(
        self, paths: Sequence[Path], asked: Choices, *, progress: Progress, memory: object
    ) -> Iterator[Outcome]:
        del asked, memory
        self.calls += 1
        progress("Reading", 0, 1)
        [path] = paths
        if not path.exists():
            yield Outcome(path=path, problem=f"There is no file “{path}”.")
            return
        book = read(path)
        yield Outcome(path=path, report=self._report(book), book=book)
        self.then()

    def _report(self, book: Book) -> Report:
        found: list[Issue] = [
            slip(book, "creek", check="words/odd", message="an odd word", tier=Tier.QUERY)
        ]
        if not self.mended:
            found.append(slip(book, "the the", "the", check="repetition/x", message="a word twice"))
        return report_of(
            book,
            ranked(book, with_keys(book, found)),
            english=English.BRITISH,
            age_band="picture",
            words_to_confirm=(),
            reading=measure(book, vocabulary_of(book)),
            engines=(),
            notices=self.notices,
        )


@pytest.fixture
def pipeline(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> FakePipeline:
    def sheet(path: Path, *, memory: object, made: date, progress: Progress) -> StyleSheet:
        del path, memory, made, progress
        return lantern()

    fake = FakePipeline()
    monkeypatch.setattr("proofkit.cli.handing_off.check_manuscripts", fake)
    monkeypatch.setattr("proofkit.cli.handing_off.style_sheet", sheet)
    monkeypatch.setenv("PROOFKIT_CACHE", str(tmp_path / "cache"))
    (tmp_path / "book").mkdir()
    monkeypatch.chdir(tmp_path / "book")
    write(Path("otter.docx"), paragraph("The otter swam over the the creek."))
    return fake


def handoff(*arguments: str | Path, typed: str | None = None) -> Result:
    return CliRunner().invoke(app, ["handoff", *map(str, arguments)], input=typed)


def comments(content: bytes) -> list[str]:
    return [comment.text for comment in Document(io.BytesIO(content)).comments]


def here() -> list[str]:
    return sorted(path.name for path in Path().iterdir())


def test_the_pack_is_a_folder_and_a_zip_of_the_same_files(pipeline: FakePipeline) -> None:
    pipeline.mended = True
    before = Path("otter.docx").read_bytes()
    result = handoff("otter.docx", "--output", "pack")
    assert result.exit_code == 0, result.output
    assert result.stdout == (
        "otter.docx: No errors to mend, 1 query to think about. The pack is in pack, and in pack.zip beside it\n"
    )
    assert here() == ["otter.docx", "pack", "pack.zip"]
    files = {path.name: path.read_bytes() for path in Path("pack").iterdir()}
    assert sorted(files) == NAMES
    with zipfile.ZipFile("pack.zip") as archive:
        assert {name: archive.read(name) for name in archive.namelist()} == {
            f"pack/{name}": content for name, content in files.items()
        }
    assert Path("otter.docx").read_bytes() == files["2 otter.docx"] == before


def test_only_queries_are_comments_in_the_copy(pipeline: FakePipeline) -> None:
    assert handoff("otter.docx", "--output", "pack", "--anyway").exit_code == 0
    (comment,) = comments(Path("pack/3 otter - open queries.docx").read_bytes())
    assert "an odd word" in comment.lower()
    inside = [row.cells[1].text for row in Document("pack/1 Brief.docx").tables[1].rows]
    assert "the same with 1 open query as a comment" in inside
    assert pipeline.calls == 1


@pytest.mark.usefixtures("pipeline")
def test_from_a_text_file_a_word_file_is_made() -> None:
    Path("otter.txt").write_text("The otter swam over the the creek.\n")
    assert handoff("otter.txt", "--output", "pack", "--anyway").exit_code == 0
    made = Document("pack/2 otter.docx")
    assert [p.text for p in made.paragraphs if p.text] == ["The otter swam over the the creek."]
    assert len(comments(Path("pack/3 otter - open queries.docx").read_bytes())) == 1


@pytest.mark.usefixtures("pipeline")
def test_with_errors_left_nothing_is_made_where_nobody_can_be_asked() -> None:
    result = handoff("otter.docx", "--output", "pack")
    assert result.exit_code == 1
    assert result.stderr.startswith("proofkit still sees 1 error in the manuscript. No pack was")
    assert "--anyway" in result.stderr
    assert here() == ["otter.docx"]


@pytest.mark.usefixtures("pipeline")
@pytest.mark.parametrize(
    ("typed", "code"), [("yes", 0), ("Y", 0), ("", 1), ("no", 1), ("yess", 1), (EOFError(), 1)]
)
def test_in_a_terminal_the_author_is_asked(
    monkeypatch: pytest.MonkeyPatch, typed: str | EOFError, code: int
) -> None:
    def answer(_prompt: str) -> str:
        if isinstance(typed, EOFError):
            raise typed
        return typed

    class Terminal(io.StringIO):
        def isatty(self) -> bool:
            return True

    from proofkit.cli.handing_off import hand_off  # noqa: PLC0415 - with the streams below

    monkeypatch.setattr("builtins.input", answer)
    monkeypatch.setattr(sys, "stdin", Terminal())
    monkeypatch.setattr(sys, "stdout", Terminal())
    assert hand_off(Path("otter.docx"), Path("pack"), anyway=False) == code
    assert Path("pack").exists() == Path("pack.zip").exists() == (code == 0)


@pytest.mark.parametrize("output", [".", "../book", "full", "file", "zipped", "nowhere/pack"])
def test_nothing_that_is_there_is_touched(pipeline: FakePipeline, output: str) -> None:
    Path("full").mkdir()
    Path("full/notes.txt").write_text("mine")
    Path("file").write_text("mine")
    Path("zipped.zip").write_text("mine")
    before = here()
    result = handoff("otter.docx", "--output", output, "--anyway")
    assert result.exit_code == 2
    assert len(result.stderr.splitlines()) == 1
    assert pipeline.calls == 0
    assert here() == before
    assert Path("full/notes.txt").read_text() == Path("zipped.zip").read_text() == "mine"


@pytest.mark.usefixtures("pipeline")
def test_an_empty_folder_is_filled() -> None:
    Path("pack").mkdir()
    assert handoff("otter.docx", "--output", "pack/", "--anyway").exit_code == 0
    assert sorted(path.name for path in Path("pack").iterdir()) == NAMES


@pytest.mark.skipif(os.name != "posix" or os.geteuid() == 0, reason="root may write anywhere")
def test_a_place_that_cannot_be_written_to_is_named_before_the_work(pipeline: FakePipeline) -> None:
    Path("closed").mkdir(mode=0o555)
    result = handoff("otter.docx", "--output", "closed/pack", "--anyway")
    assert result.exit_code == 2
    assert "can't be written to. Choose another one for the pack." in result.stderr
    assert pipeline.calls == 0


@pytest.mark.usefixtures("pipeline")
@pytest.mark.parametrize("step", ["rename", "replace", "write_bytes"])
def test_a_disk_that_fails_leaves_no_half_pack(monkeypatch: pytest.MonkeyPatch, step: str) -> None:
    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    before = here()
    monkeypatch.setattr(Path, step, full)
    result = handoff("otter.docx", "--output", "pack", "--anyway")
    assert result.exit_code == 2
    assert "(no space left on device). Nothing was left half written" in result.stderr
    assert here() == before


def test_a_manuscript_that_was_changed_meanwhile_is_not_handed_off(pipeline: FakePipeline) -> None:
    pipeline.then = lambda: write(Path("otter.docx"), paragraph("The otter swam away."))
    result = handoff("otter.docx", "--output", "pack", "--anyway")
    assert result.exit_code == 2
    assert "was changed after it was checked" in result.stderr
    assert here() == ["otter.docx"]


@pytest.mark.usefixtures("pipeline")
def test_a_manuscript_that_is_not_there_gets_a_sentence() -> None:
    result = handoff("badger.docx", "--output", "pack")
    assert result.exit_code == 2
    assert result.stderr == "There is no file “badger.docx”.\n"


def test_what_was_not_checked_is_said_and_ends_with_3(pipeline: FakePipeline) -> None:
    pipeline.notices = (Notice(text="The grammar engine did not start.", unchecked=True),)
    result = handoff("otter.docx", "--output", "pack", "--anyway")
    assert result.exit_code == 3
    assert result.stderr == "Note: The grammar engine did not start.\n"
    brief = [p.text for p in Document("pack/1 Brief.docx").paragraphs]
    assert "•\tin this run: The grammar engine did not start." in brief


@pytest.mark.usefixtures("pipeline")
@pytest.mark.parametrize(
    "arguments", [[], ["a.docx"], ["a.docx", "b.docx", "--output", "p"], ["--output", "p"]]
)
def test_a_command_that_cannot_be_understood_ends_with_2(arguments: list[str]) -> None:
    assert handoff(*arguments).exit_code == 2


def test_its_help_waits_for_no_library() -> None:
    heavy = ("spacy", "docx", "rich", "msgspec", "lxml")
    ask = f"import atexit; atexit.register(lambda: print([m for m in {heavy} if m in sys.modules])); run()"
    result = proofkit_run("handoff", "--help", before=ask)
    assert result.returncode == 0
    assert result.stdout.decode().rstrip().endswith("[]")


@pytest.mark.engine
def test_the_example_is_handed_off(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("proofkit.cli.handing_off.memory_file", lambda: tmp_path / "memory.db")
    manuscript = tmp_path / f"{NAME}.docx"
    shutil.copyfile(HERE / manuscript.name, manuscript)
    before = manuscript.read_bytes()
    assert handoff(manuscript, "--output", tmp_path / "pack").exit_code == 1
    assert not (tmp_path / "pack").exists()
    result = handoff(manuscript, "--output", tmp_path / "pack", "--anyway")
    assert result.exit_code == 0, result.output
    assert manuscript.read_bytes() == before
    pack = tmp_path / "pack"
    asked = comments((pack / f"3 {NAME} - open queries.docx").read_bytes())
    assert asked
    assert f"{len(asked)} queries to think about" in result.stdout
    told = [cell.text for cell in Document(str(pack / "1 Brief.docx")).tables[0].columns[1].cells]
    assert told[1:3] == ["The Borrowed Wind", "Orla Finchley"]
    by_spread = Document(str(pack / "7 Words per spread.docx")).tables[0].rows
    counts = [int(row.cells[1].text) for row in by_spread[1:]]
    assert sum(counts[:-1]) == counts[-1]
    assert told[3].startswith(f"{counts[-1]} words, ")
