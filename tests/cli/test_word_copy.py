"""``proofkit check --format word``."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from typer.testing import CliRunner, Result

from examples.make_examples import HERE, NAME
from proofkit.cli.main import app
from tests.reports.test_word_copy import comments_part
from tests.reports.word_copies import anchored, parts_of
from tests.reports.word_files import paragraph, write


def check(*arguments: str | Path) -> Result:
    return CliRunner().invoke(app, ["check", *map(str, arguments), "--format", "word"])


def test_a_copy_needs_somewhere_to_go(tmp_path: Path) -> None:
    path = write(tmp_path / "otter.docx", paragraph("The otter swam away."))
    result = check(path)
    assert result.exit_code == 2
    assert '--output "otter - proof queries.docx"' in result.stderr


def test_the_manuscript_is_never_written_over(tmp_path: Path) -> None:
    path = write(tmp_path / "otter.docx", paragraph("The otter swam away."))
    before = path.read_bytes()
    result = check(path, "--output", path)
    assert result.exit_code == 2
    assert "never writes over one" in result.stderr
    assert path.read_bytes() == before


@pytest.mark.engine
def test_the_example_is_copied_into_a_folder_once(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("proofkit.cli.checking.memory_file", lambda: tmp_path / "memory.db")
    manuscript = tmp_path / f"{NAME}.docx"
    shutil.copyfile(HERE / manuscript.name, manuscript)
    before = manuscript.read_bytes()
    assert check(manuscript, "--output", f"{tmp_path}/out/").exit_code == 1
    (copy,) = (tmp_path / "out").iterdir()
    assert copy.name == f"{NAME} - proof queries.docx"
    assert manuscript.read_bytes() == before
    after = parts_of(copy.read_bytes())
    said = {
        text.rpartition(" [")[0]: anchored(after["word/document.xml"])[n]
        for n, (_, text) in comments_part(after).items()
    }
    assert said["Read “morning”. No dictionary has this word."] == "mornign"
    assert said["Read “the”. A word twice."] == "the the"
    assert len(said) == len(comments_part(after)) >= 15
    # What the author may have worked in is never written over.
    copy.write_bytes(b"worked in")
    assert check(manuscript, "--output", f"{tmp_path}/out/").exit_code == 2
    assert copy.read_bytes() == b"worked in"
