"""The clean manuscript as a page that prints well: the text alone, nothing marked in it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from pathlib import Path

from proofkit.book import Book, Page, Paragraph, Role
from proofkit.reports.html.sealed import sealed_page
from proofkit.settings import English

_BESIDE_THIS = Path(__file__).parent
_KINDS = {Role.TITLE: "titles", Role.AUTHOR: "author"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """Characters of a paragraph that are all in italics, or none of them."""

    text: str
    italic: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Printed:
    """A paragraph; ``kind`` is "titles", "author" or "" for all else."""

    kind: str
    pieces: tuple[Piece, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """A page of the manuscript under its label, or under none."""

    label: str
    paragraphs: tuple[Printed, ...]


def as_printed(book: Book, *, title: str, english: English) -> str:
    """The book page by page, as the manuscript has it; a page stays whole where paper has room for it."""
    sheets = [
        Sheet(
            label=page.label,
            paragraphs=tuple(
                Printed(kind=_KINDS.get(paragraph.role, ""), pieces=tuple(_pieces(page, paragraph)))
                for paragraph in page.paragraphs
            ),
        )
        for page in book.pages
    ]
    return sealed_page(_BESIDE_THIS, title=title, language=english.code, sheets=sheets)


def _pieces(page: Page, paragraph: Paragraph) -> Iterator[Piece]:
    inside = [(max(a, paragraph.start), min(b, paragraph.end)) for a, b in page.emphasis]
    italic = [(a, b) for a, b in inside if a < b]
    bounds = {paragraph.start, paragraph.end, *(at for both in italic for at in both)}
    for start, end in pairwise(sorted(bounds)):
        leans = any(a <= start and end <= b for a, b in italic)
        yield Piece(text=page.text[start:end], italic=leans)
