"""The Word copies of hard files, opened by another word processor."""

from __future__ import annotations

import shutil
import subprocess
from pathlib import Path

import pytest

from proofkit.readers.read import read
from proofkit.readers.word_comments import comments_in
from proofkit.reports.word_copy.copy import as_word_copy
from tests.reports.hard_word_files import FILES
from tests.reports.test_word_copy import MADE, everywhere, report

SOFFICE = shutil.which("soffice")
# It makes fields and smart tags anew, and comments inside them go; and symbols are not text to it.
NOT_COMPARED = {"fields", "wrapped", "mixed"}

pytestmark = [
    pytest.mark.slow,
    pytest.mark.skipif(SOFFICE is None, reason="LibreOffice is not installed"),
]


@pytest.fixture(scope="module")
def copies(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    folder = tmp_path_factory.mktemp("copies")
    made = {}
    for name, file in FILES.items():
        path = file(folder / f"{name}.docx")
        book = read(path)
        made[name] = folder / f"{name}.copy.docx"
        made[name].write_bytes(as_word_copy(report(book, everywhere(book)[:60]), path, MADE))
    return made


def converted(copies: dict[str, Path], form: str, folder: Path) -> dict[str, Path]:
    profile = f"-env:UserInstallation={(folder / 'profile').as_uri()}"
    command = [str(SOFFICE), profile, "--headless", "--convert-to", form, "--outdir", str(folder)]
    subprocess.run(
        [*command, *map(str, copies.values())], check=True, capture_output=True, timeout=180
    )
    return {name: folder / f"{name}.copy.{form.partition(':')[0]}" for name in copies}


def test_every_copy_opens(copies: dict[str, Path], tmp_path: Path) -> None:
    made = converted(copies, "pdf", tmp_path)
    assert {name: pdf.read_bytes()[:5] for name, pdf in made.items()} == dict.fromkeys(
        FILES, b"%PDF-"
    )


def test_every_comment_is_seen_at_its_words(copies: dict[str, Path], tmp_path: Path) -> None:
    saved = converted(copies, "docx:MS Word 2007 XML", tmp_path)
    for name in sorted(copies.keys() - NOT_COMPARED):
        ours = {comment.text: comment.words for comment in comments_in(copies[name])}
        theirs = {comment.text: comment.words for comment in comments_in(saved[name])}
        assert len(ours) >= 20, name
        assert theirs == ours, name
