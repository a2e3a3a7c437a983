"""The Word copy: the manuscript once more, with a comment at each open issue.

A Word file is copied as it is: every part but the text's and the comments' stays byte for byte, and in
the text nothing but the comments' marks is new. From any other format a clean document is made first.
"""

from __future__ import annotations

import io
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from proofkit.book import Book
from proofkit.issue import Tier
from proofkit.problem import Unusable
from proofkit.readers.assembly import book_of
from proofkit.readers.package import Package
from proofkit.readers.read import read
from proofkit.readers.sniff import Format, is_zip, package_format
from proofkit.readers.word import WordFile, open_word
from proofkit.report import RankedIssue, Report
from proofkit.reports.keys import short_keys
from proofkit.reports.word_copy.anchors import Anchor, Anchors
from proofkit.reports.word_copy.clean import clean_copy
from proofkit.reports.word_copy.package import (
    Note,
    add_comments,
    as_document,
    comments_of,
    repacked,
)
from proofkit.reports.word_copy.ranges import mark
from proofkit.reports.word_copy.wording import comment_text

WHAT = "Word copy"


@dataclass(frozen=True, slots=True, kw_only=True)
class _Opened:
    """A Word file that comments can be set in, and where the book's paragraphs stand in it."""

    content: bytes
    package: Package
    word: WordFile
    anchors: Anchors


def as_word_copy(report: Report, manuscript: Path, made: datetime) -> bytes:
    """A Word file of the manuscript with the report's issues as comments; ``made`` is their time, in UTC.

    Raises Unusable where the manuscript can't be read, or is no longer the one that was checked.
    """
    try:
        content = manuscript.read_bytes()
    except OSError as error:
        raise Unusable(
            f"“{manuscript.name}” can't be opened any more, so no {WHAT} was made; put it back and "
            "check it again."
        ) from error
    opened = _opened(content, manuscript, report)
    comments = comments_of(opened.package, opened.word)
    keys = short_keys(report)
    notes: list[Note] = []
    placed: list[tuple[int, Anchor]] = []
    # In a copy of a copy, what the author left open has its comment, perhaps with an answer.
    had = comments.own_keys()
    new = [issue for issue in _in_order(report.issues) if not issue.key.startswith(had)]
    for number, issue in enumerate(new, comments.first_free(opened.word.root)):
        anchor = opened.anchors.of(issue.page, issue.start, issue.end)
        if anchor is None:
            raise Unusable(f"“{manuscript.name}” has no text that a comment could be set at.")
        text = comment_text(report, issue, keys[issue.key], anchor.beside)
        notes.append(Note(number=number, text=text))
        placed.append((number, anchor))
    mark(opened.word.root, placed)
    add_comments(comments, notes, made)
    changed = {opened.word.part: opened.word.root, comments.part: comments.root, **comments.more}
    return repacked(opened.content, changed if notes else as_document(opened.package, opened.word))


def _in_order(issues: Iterable[RankedIssue]) -> list[RankedIssue]:
    """By the book; at one place an error comes before a query."""
    return sorted(issues, key=lambda i: (i.page, i.start, i.tier is Tier.QUERY, i.end, i.rank))


def _opened(content: bytes, manuscript: Path, report: Report) -> _Opened:
    if is_zip(content):
        package = Package(io.BytesIO(content), manuscript)
        mimetype = package.bytes_of("mimetype") or b""
        if package_format(package.names(), mimetype, manuscript.name) is Format.WORD:
            word = open_word(package)
            book = book_of(word.source, manuscript)
            locators = {
                (page.number, index): paragraph.locator
                for page in book.pages
                for index, paragraph in enumerate(page.paragraphs)
            }
            _refuse_if_changed(book, report, manuscript)
            anchors = Anchors(book, word.passages, locators=locators, labels={})
            return _Opened(content=content, package=package, word=word, anchors=anchors)
    book = read(manuscript)
    _refuse_if_changed(book, report, manuscript)
    clean = clean_copy(book)
    package = Package(io.BytesIO(clean.content), manuscript)
    word = open_word(package)
    anchors = Anchors(book, word.passages, locators=clean.locators, labels=clean.labels)
    return _Opened(content=clean.content, package=package, word=word, anchors=anchors)


def _refuse_if_changed(book: Book, report: Report, manuscript: Path) -> None:
    if [page.text for page in book.pages] != [page.text for page in report.pages]:
        raise Unusable(
            f"“{manuscript.name}” was changed after it was checked, so no {WHAT} was made; check it again."
        )
