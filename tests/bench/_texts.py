"""The texts that slips are planted into: forty picture books, and five novels cut into short books."""

from __future__ import annotations

import json
import random
import re
import tarfile
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path

from proofkit.book import Book, Page, Paragraph, Span
from proofkit.readers.read import read

SHARED = Path(__file__).resolve().parents[3] / "shared"
BOOKS = SHARED / "books" / "dev"
CORPUS = SHARED / "corpus" / "childrens-novels.tar.xz"
# Nothing was ever trained on these: The Wind in the Willows, The Story of Doctor Dolittle, Five
# Children and It, Alice's Adventures in Wonderland, The Magic of Oz.
NOVELS = ("289", "501", "778", "11", "419")
_WORDS_OF_BOOK = 260
_NEAR = 15  # characters
_WORDS_OF_PAGE = 55
_ENDS = re.compile(r"[.!?…—:;,][\"'”’)]*$")

# For each marked page, its text without white space, and the ranges of its characters.
Marks = Mapping[str, Sequence[tuple[int, int]]]


def picture_books() -> list[Book]:
    """The forty marked books."""
    return [read(path) for path in sorted(BOOKS.glob("*.md"))]


def proofreaders_marks() -> Marks:
    """Where the proofreader marked the forty books: for each marked page, its ranges."""
    marks = defaultdict(list)
    for mark in json.loads((SHARED / "books" / "dev-marks.json").read_text("utf-8")):
        marks[mark["book"], mark["page"]].append((mark["start"], mark["end"]))
    found: dict[str, list[tuple[int, int]]] = {}
    for (book, number), ranges in marks.items():
        page = re.split(r"(?m)^##\s*$", (BOOKS / book).read_text("utf-8"))[number]
        found[_packed(page)] = ranges
    return found


def beside_mark(text: str, at: int, marks: Marks) -> bool:
    """Whether the character ``at`` of a page's text is in a marked place or near one."""
    place = len(_packed(text[:at]))
    return any(start - _NEAR < place < end + _NEAR for start, end in marks.get(_packed(text), ()))


def on_mark(book: Book, span: Span, marks: Marks) -> bool:
    """Whether some characters of a marked book touch a mark, as the shared ruler sees it."""
    text = book.page(span.page).text
    start, end = len(_packed(text[: span.start])), len(_packed(text[: span.end]))
    ranges = marks.get(_packed(text), ())
    return any(first - 1 < end and start < last + 1 for first, last in ranges)


def _packed(text: str) -> str:
    return "".join(text.split())


def excerpts(numbers: Sequence[str], of_each: int, seed: int) -> list[Book]:
    """``of_each`` stretches of about 260 words of each novel, set in pages like a picture book."""
    books = []
    for number, text in _texts(numbers):
        every = list(_cut(number, text))
        choose = random.Random(seed)  # noqa: S311 - a sample, no secret
        books += choose.sample(every, min(of_each, len(every)))
    return books


def _texts(numbers: Sequence[str]) -> Iterator[tuple[str, str]]:
    with tarfile.open(CORPUS) as archive:
        for member in archive:
            found = re.search(r"_(\d+)\.txt$", member.name)
            if found and found.group(1) in numbers and (file := archive.extractfile(member)):
                yield found.group(1), file.read().decode("utf-8")


def _cut(number: str, text: str) -> Iterator[Book]:
    """The novel in stretches; a heading, a song or a table ends one, and what is too short is left out."""
    pages: list[list[str]] = [[]]
    for block in [*re.split(r"\n\s*\n", text), ""]:
        words = " ".join(re.sub(r"[_*]", "", block).split())
        if not _ENDS.search(words) or _set_in_lines(block):
            pages = [[]]
            continue
        pages[-1].append(words)
        if _length(pages[-1:]) >= _WORDS_OF_PAGE:
            if _length(pages) >= _WORDS_OF_BOOK:
                yield _book(number, pages)
                pages = []
            pages.append([])


def _set_in_lines(block: str) -> bool:
    lines = block.strip().splitlines()
    return len(lines) > 1 and max(map(len, lines[:-1])) < 50


def _length(pages: Sequence[Sequence[str]]) -> int:
    return sum(len(block.split()) for page in pages for block in page)


def _book(number: str, pages: Sequence[Sequence[str]]) -> Book:
    return Book(
        path=number,
        title="",
        pages=tuple(_page(place, blocks) for place, blocks in enumerate(pages, 1)),
    )


def _page(number: int, blocks: Sequence[str]) -> Page:
    paragraphs, at = [], 0
    for block in blocks:
        paragraphs.append(Paragraph(start=at, end=at + len(block)))
        at += len(block) + 2
    return Page(number=number, text="\n\n".join(blocks), paragraphs=tuple(paragraphs))
