"""From a checked manuscript to the pack that its proofreader is given: the files, by their names."""

from __future__ import annotations

import io
import re
import zipfile
from collections.abc import Mapping
from dataclasses import replace
from datetime import datetime
from pathlib import Path

from proofkit.book import Book, Role
from proofkit.pipeline import Outcome
from proofkit.problem import Unusable
from proofkit.readers.package import Package
from proofkit.readers.sniff import Format, is_zip, package_format
from proofkit.reports.handoff.brief import brief
from proofkit.reports.handoff.checklist import checklist
from proofkit.reports.handoff.lists import rulings_list, spreads_list, words_list
from proofkit.reports.handoff.printed import as_printed
from proofkit.reports.handoff.word import as_word as paper_as_word
from proofkit.reports.phrases import counted, title
from proofkit.reports.stylesheet.word import as_word as sheet_as_word
from proofkit.reports.word_copy.clean import clean_copy
from proofkit.reports.word_copy.copy import as_word_copy
from proofkit.stylesheet.sheet import StyleSheet

_BY = re.compile(r"^by:? ", re.IGNORECASE)
_NEVER_CHECKED = "{} could not be checked."


def pack_of(outcome: Outcome, sheet: StyleSheet, made: datetime) -> Mapping[str, bytes]:
    """The files of the pack, in the order in which they are read; ``made`` is their time, in UTC.

    Raises Unusable where the manuscript was not checked, or is no longer as it was then.
    """
    report, book = outcome.report, outcome.book
    if report is None or book is None:
        raise Unusable(outcome.problem or _NEVER_CHECKED.format(outcome.path))
    # The copy with the queries comes first: it refuses a manuscript that was changed meanwhile.
    asked = as_word_copy(replace(report, issues=report.queries), outcome.path, made)
    clean = _as_word(outcome.path, book)
    stem, english = outcome.path.stem, report.manuscript.english
    printed = as_printed(book, title=title(report), english=english)
    papers = (
        (rulings_list(report, outcome.rulings), "what the author lets stand, and why"),
        (words_list(report), "words that no dictionary has"),
        (spreads_list(report), "how the text is shared out"),
        (checklist(), "for the last look, and again when the pages are set"),
    )
    inside = {
        f"2 {stem}.docx": (clean, "the manuscript, to work in"),
        f"2 {stem}.html": (printed.encode(), "the manuscript, to print and to write on"),
        f"3 {stem} - open queries.docx": (asked, _about_queries(len(report.queries))),
        "4 Style sheet.docx": (sheet_as_word(sheet), "what the book decided, or mostly does"),
    }
    for number, (paper, what) in enumerate(papers, 5):
        content = paper_as_word(paper, title(report), english, made)
        inside[f"{number} {paper.name}.docx"] = (content, what)
    told = tuple((name, what) for name, (_, what) in inside.items())
    first = brief(report, author=author_of(book), papers=told)
    start = {"1 Brief.docx": paper_as_word(first, title(report), english, made)}
    return start | {name: content for name, (content, _) in inside.items()}


def _about_queries(number: int) -> str:
    if not number:
        return "the same; no query is open"
    return f"the same with {counted(number, 'open query')} as {'a comment' if number == 1 else 'comments'}"


def author_of(book: Book) -> str:
    """Who wrote the book, as its title page has it; "" where it names nobody."""
    lines = (
        page.text[paragraph.start : paragraph.end]
        for page in book.pages
        for paragraph in page.paragraphs
        if paragraph.role is Role.AUTHOR
    )
    return "; ".join(dict.fromkeys(_name(line) for line in lines))


def _name(line: str) -> str:
    """The name in a line that may begin with "By"."""
    name = " ".join(line.split())
    return _BY.sub("", name)


def zipped(files: Mapping[str, bytes], folder: str, made: datetime) -> bytes:
    """The files as a .zip, all in one ``folder``."""
    raw = io.BytesIO()
    with zipfile.ZipFile(raw, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, content in files.items():
            entry = zipfile.ZipInfo(f"{folder}/{name}", made.timetuple()[:6])
            entry.compress_type = zipfile.ZIP_DEFLATED
            entry.external_attr = 0o644 << 16
            archive.writestr(entry, content)
    return raw.getvalue()


def _as_word(manuscript: Path, book: Book) -> bytes:
    """A Word file is copied as it is; from any other a clean one is made."""
    content = manuscript.read_bytes()
    if is_zip(content):
        package = Package(io.BytesIO(content), manuscript)
        mimetype = package.bytes_of("mimetype") or b""
        if package_format(package.names(), mimetype, manuscript.name) is Format.WORD:
            return content
    return clean_copy(book).content
