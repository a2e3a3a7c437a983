"""Examples for checks, as text that a proofreader can read.

An example is a few lines of a story. A place at fault stands between marks, and after a bar what it
should read; more readings may follow, and an empty one means that the words go:

    She picked up ›the the|the‹ key.

A line of ``---`` starts a new page, and one of ``--- Page 7`` a page with that label. An example
without marks must stay silent.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from proofkit.book import Book, Page, Paragraph, Span

_PLACE = re.compile(r"›([^›‹|]*)(?:\|([^›‹]*))?‹")


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """Where an issue must be, and which readings it must suggest first (None: any)."""

    span: Span
    quote: str
    readings: tuple[str, ...] | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Example:
    """A book of a few pages and the places at fault in it."""

    book: Book
    places: tuple[Place, ...]


def example(marked: str) -> Example:
    """Read one marked example."""
    pages, places = [], []
    unlabelled, *rest = re.split(r"(?m)^---(?: (.+))?$\n?", marked.strip("\n"))
    parts = [
        *([(None, unlabelled)] if unlabelled else []),
        *zip(rest[::2], rest[1::2], strict=True),
    ]
    for number, (label, part) in enumerate(parts, 1):
        text, found = _unmarked(part.strip("\n"), number)
        pages.append(_page(number, text, label))
        places += found
    return Example(
        book=Book(path="example", title="", pages=tuple(pages)),
        places=tuple(places),
    )


def book_of(*texts: str) -> Book:
    """A book with one page of story for each text; blank lines part paragraphs."""
    pages = tuple(_page(number, text) for number, text in enumerate(texts, 1))
    return Book(path="example", title="", pages=pages)


def _unmarked(part: str, page: int) -> tuple[str, list[Place]]:
    text, places, at = "", [], 0
    for match in _PLACE.finditer(part):
        text += part[at : match.start()]
        quote = match.group(1)
        readings = None if match.group(2) is None else tuple(match.group(2).split("|"))
        span = Span(page=page, start=len(text), end=len(text) + len(quote))
        places.append(Place(span=span, quote=quote, readings=readings))
        text += quote
        at = match.end()
    return text + part[at:], places


def _page(number: int, text: str, label: str | None = None) -> Page:
    paragraphs, at = [], 0
    for block in text.split("\n\n"):
        paragraphs.append(Paragraph(start=at, end=at + len(block)))
        at += len(block) + 2
    folios: tuple[int, ...] = (number,)
    if label:
        folios = () if "spread" in label.lower() else tuple(map(int, re.findall(r"\d+", label)))
    return Page(
        number=number, text=text, paragraphs=tuple(paragraphs), label=label or "", folios=folios
    )
