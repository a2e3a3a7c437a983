"""Which parts of a book are set in lines as verse is.

An author sets verse in one of two ways: lines broken inside a paragraph, or a short paragraph a line.
A paragraph of two lines or more is a stanza; so is a run of short paragraphs on one page. On the way
through a file the line ends may have been lost; then a line ends where a stop or a comma stands before
a capital.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import groupby

from proofkit.book import Book, Page, Role, Span

LONGEST_LINE = 75  # characters; a hexameter has 60 to 70
_LINE_OPENERS = (
    "The|An?|And|But|Or|So|When|If|In|On|At|To|Of|For|With|From|By|As|His|Her|Their|My|Your|Our|Where|"
    "While|Which|Who|Until|Till|Because|Not|No|All|Was|Is|He|She|It|They|We|That|This|Then|There|Up|"
    "Down|Over|Like|How|What"
)
_PIECE = re.compile(
    r"\S(?:.|\n)*?(?:"
    r"[,.;:!?—…][”’\"')]*(?=\s+[“‘\"'(]*[A-Z])"  # a stop or a comma, then a capital
    rf"|[a-z](?=\s+(?:{_LINE_OPENERS})\s)"  # no mark at all, then a word that has no capital inside a line
    r"|(?=\s*$|\n\n|\Z))"
)
_LETTERS = re.compile(r"[^\W\d_]")


@dataclass(frozen=True, slots=True, kw_only=True)
class Set:
    """One line as it is set: its place and its text, trimmed."""

    span: Span
    text: str


Block = tuple[Set, ...]


def blocks_in_lines(book: Book) -> tuple[Block, ...]:
    """Every run of at least two lines that is set like a stanza, in the book's order."""
    return tuple(block for page in book.story_pages for block in _of_page(page))


def single_lines(book: Book) -> tuple[Set, ...]:
    """All lines of all pages in a row, however they are set, where every page has at most two; else none."""
    rows = [_lines(page, 0, len(page.text)) for page in book.story_pages if page.words]
    if any(len(row) > 2 or any(len(line.text) > LONGEST_LINE for line in row) for row in rows):
        return ()
    return tuple(line for row in rows for line in row)


def rejoined_lines(book: Book) -> tuple[Block, ...]:
    """For each page the lines that it would have if its verse had been run together."""
    blocks = []
    for page in book.story_pages:
        lines = [
            line
            for paragraph in page.paragraphs
            if paragraph.role is Role.STORY
            for line in _pieces(page, paragraph.start, paragraph.end)
        ]
        if len(lines) > 1 and all(len(line.text) <= LONGEST_LINE for line in lines):
            blocks.append(tuple(lines))
    return tuple(blocks)


def _pieces(page: Page, start: int, end: int) -> Iterator[Set]:
    for match in _PIECE.finditer(page.prose, start, end):
        if _LETTERS.search(match.group()):
            yield Set(span=page.span(*match.span()), text=match.group())


def _of_page(page: Page) -> Iterator[Block]:
    story = [p for p in page.paragraphs if p.role is Role.STORY]
    rows = [_lines(page, paragraph.start, paragraph.end) for paragraph in story]
    for alone, run in groupby(filter(None, rows), key=lambda row: len(row) == 1):
        if alone:
            yield from _runs(row[0] for row in run)
        else:
            yield from (row for row in run if all(len(line.text) <= LONGEST_LINE for line in row))


def _runs(lines: Iterable[Set]) -> Iterator[Block]:
    for short, run in groupby(lines, key=lambda line: len(line.text) <= LONGEST_LINE):
        block = tuple(run)
        if short and len(block) > 1:
            yield block


def _lines(page: Page, start: int, end: int) -> Block:
    found = []
    at = start
    for text in page.prose[start:end].split("\n"):
        if _LETTERS.search(text):
            first = at + len(text) - len(text.lstrip())
            stripped = text.strip()
            span = page.span(first, first + len(stripped))
            found.append(Set(span=span, text=stripped))
        at += len(text) + 1
    return tuple(found)
