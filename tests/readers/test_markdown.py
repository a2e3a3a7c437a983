"""Markdown as authors write it."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from tests.readers.reading import labels, read_text, said, texts


@pytest.mark.parametrize(
    ("source", "text"),
    [
        ("A *very* **big** `goose` &amp; [a clock](x.html)\n", "A very big goose & a clock"),
        ("Tick  \ntock\\\nbong\n", "Tick\ntock\nbong"),
        ("Tick<br>tock <!-- hm? --> bong\n", "Tick\ntock  bong"),
        ("    Once upon a time.\n", "Once upon a time."),
        (
            "- Hello, said Goose.\n- Tick, said Clock.\n",
            "- Hello, said Goose.\n\n- Tick, said Clock.",
        ),
        ("1. One goose.\n2. Two geese.\n", "1. One goose.\n\n2. Two geese."),
        ("> “Tick,” it said.\n", "“Tick,” it said."),
        ("One goose ![a goose](x.png) only\n", "One goose  only"),
    ],
)
def test_inline_marks_are_no_text(tmp_path: Path, source: str, text: str) -> None:
    assert texts(read_text(tmp_path, source, ".md")) == [text]


def test_brackets_are_not_link_references(tmp_path: Path) -> None:
    book = read_text(tmp_path, "[Page 2]: Tick.\n\n[Page 3]:\nTock.\n", ".md")
    assert labels(book) == ["Page 2", "Page 3"]
    assert texts(book) == ["Tick.", "Tock."]


def test_front_matter_gives_the_title(tmp_path: Path) -> None:
    book = read_text(
        tmp_path,
        '---\ntitle: "The Goose"\nauthor: Una Vale\n---\n\n##\nTick.\n\n##\nTock.\n',
        ".md",
    )
    assert book.title == "The Goose"
    assert texts(book) == ["Tick.", "Tock."]
    assert book.pages[1].paragraphs[0].locator == "line 10"


def test_tables_of_pages(tmp_path: Path) -> None:
    book = read_text(
        tmp_path,
        "| Page | Text | Art |\n|---|---|---|\n| 2 | Tick. | clock |\n| 3 | Tock. | goose |\n",
        ".md",
    )
    assert labels(book) == ["Page 2", "Page 3"]
    assert said(book.pages[1]) == [("story", "Tock."), ("note", "goose")]


@pytest.mark.parametrize("mark", ["\\newpage", '<div style="page-break-after: always"></div>'])
def test_page_breaks_of_converters(tmp_path: Path, mark: str) -> None:
    assert texts(read_text(tmp_path, f"Tick.\n\n{mark}\n\nTock.\n", ".md")) == ["Tick.", "Tock."]


def test_a_heading_beside_bare_ones_starts_a_page(tmp_path: Path) -> None:
    book = read_text(tmp_path, "# G\n\n##\nTick.\n\n## The Pond\nTock.\n", ".md")
    assert said(book.pages[2]) == [("title", "The Pond"), ("story", "Tock.")]


def test_reading_it_loads_no_other_formats_library(tmp_path: Path) -> None:
    code = (
        "import sys, pathlib; from proofkit.readers.read import read; read(pathlib.Path(sys.argv[1])); "
        "print(sorted(m for m in ('docx', 'lxml', 'rich', 'spacy') if m in sys.modules))"
    )
    path = tmp_path / "goose.md"
    path.write_text("Tick.\n", encoding="utf-8")
    done = subprocess.run(
        [sys.executable, "-c", code, str(path)], capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == "[]"
