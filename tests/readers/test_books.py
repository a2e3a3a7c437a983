"""Forty published picture books are read page by page as the scorer reads them."""

from __future__ import annotations

import importlib.util
from pathlib import Path
from types import ModuleType

import pytest

from proofkit.book import Role
from proofkit.readers.read import read

SHARED = Path(__file__).resolve().parents[2].parent / "shared"
BOOKS = SHARED / "books" / "dev"
SCORER = SHARED / "bench" / "score_books.py"

pytestmark = pytest.mark.skipif(not BOOKS.exists(), reason="the published books are not here")


@pytest.fixture(scope="module")
def scorer() -> ModuleType:
    spec = importlib.util.spec_from_file_location("score_books", SCORER)
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def test_every_page_is_the_scorers(scorer: ModuleType) -> None:
    read_otherwise = []
    for path in sorted(BOOKS.glob("*.md")):
        wanted = scorer.page_texts(path)
        numbers = scorer.align(wanted, [{"text": page.text} for page in read(path).pages])
        read_otherwise += [
            f"{path.stem} p{n}" for n, text in enumerate(wanted, 1) if text and n not in numbers
        ]
    assert read_otherwise == []


def test_title_story_and_colophon() -> None:
    for path in sorted(BOOKS.glob("*.md")):
        book = read(path)
        first, *story, last = book.pages
        assert first.role is Role.TITLE, path.name
        assert first.text == book.title, path.name
        assert last.role is Role.IMPRINT, path.name
        assert {page.role for page in story} == {Role.STORY}, path.name
        assert [page.spread for page in story] == list(range(1, len(story) + 1)), path.name
        roles = {p.role for page in story for p in page.paragraphs}
        assert roles <= {Role.STORY}, path.name
        assert not any(page.notes for page in story), path.name
