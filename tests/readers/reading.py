"""Reading a text as a file of some format, and what tests compare of a page."""

from __future__ import annotations

from pathlib import Path

from proofkit.book import Book, Page
from proofkit.readers.read import read


def read_text(folder: Path, text: str, suffix: str = ".txt") -> Book:
    """The book that a text file with these words is."""
    path = folder / f"manuscript{suffix}"
    path.write_text(text, encoding="utf-8", newline="")
    return read(path)


def texts(book: Book) -> list[str]:
    """The texts of the pages."""
    return [page.text for page in book.pages]


def labels(book: Book) -> list[str]:
    """The labels of the pages."""
    return [page.label for page in book.pages]


def roles(page: Page) -> list[str]:
    """The roles of a page's paragraphs, in words."""
    return [paragraph.role.value for paragraph in page.paragraphs]


def said(page: Page) -> list[tuple[str, str]]:
    """Each paragraph's role and text."""
    return [(p.role.value, page.text[p.start : p.end]) for p in page.paragraphs]
