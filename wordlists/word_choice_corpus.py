"""The training text of the word-choice model: which books, and their tokens as one long row."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from proofkit.book import Book, Page, Paragraph
from proofkit.words.context.pairs import confusion_pairs
from proofkit.words.context.tokens import class_of, tokens_of
from proofkit.words.vocabulary import vocabulary_of

# Kept out for testing: the five that tests/bench plants its slips into.
TEST = (11, 289, 419, 501, 778)
# Every so many of the others is kept out of the counts and weights, for the margins.
TUNING_EVERY = 12
SELDOM = 8  # a word met less often stands for its class
_GUTENBERG = re.compile(r"_(\d+)$")
_LAYOUT = re.compile(r"[_*]|\[[^\]]*\]")


@dataclass(frozen=True, slots=True, kw_only=True)
class Text:
    """One book: its Project Gutenberg number, its title as the file has it, its paragraphs."""

    number: int
    title: str
    paragraphs: tuple[str, ...]


def texts(folder: Path) -> Iterator[Text]:
    """All books of the folder in the order of their numbers; a paragraph met before is skipped."""
    seen: set[int] = set()
    files = {number_of(path): path for path in folder.glob("*.txt")}
    for number, path in sorted(files.items()):
        fresh = []
        for block in re.split(r"\n\s*\n", path.read_text("utf-8", errors="replace")):
            paragraph = " ".join(_LAYOUT.sub("", block).split())
            if len(paragraph) < 2 or hash(paragraph) in seen:
                continue
            seen.add(hash(paragraph))
            fresh.append(paragraph)
        yield Text(number=number, title=_GUTENBERG.sub("", path.stem), paragraphs=tuple(fresh))


def number_of(path: Path) -> int:
    """The Project Gutenberg number at the end of a file's name."""
    found = _GUTENBERG.search(path.stem)
    if found is None:
        raise ValueError(f"{path.name} does not end in a Project Gutenberg number")
    return int(found.group(1))


def split(books: list[Text]) -> tuple[list[Text], list[Text], list[Text]]:
    """Books to train on, to set the margins with, and to test on."""
    test = [book for book in books if book.number in TEST]
    others = [book for book in books if book.number not in TEST]
    tuning = others[::TUNING_EVERY]
    return [book for book in others if book not in tuning], tuning, test


def book_of(text: Text) -> Book:
    """The text as proofkit sees a manuscript: one page, its paragraphs parted by blank lines."""
    paragraphs, at = [], 0
    for paragraph in text.paragraphs:
        paragraphs.append(Paragraph(start=at, end=at + len(paragraph)))
        at += len(paragraph) + 2
    page = Page(number=1, text="\n\n".join(text.paragraphs), paragraphs=tuple(paragraphs))
    return Book(path=text.title, title=text.title, pages=(page,), paginated=False)


def row_of(book: Book) -> list[str]:
    """All tokens of a book, paragraph after paragraph, with their edges."""
    vocabulary = vocabulary_of(book)
    row: list[str] = []
    for page in book.pages:
        for part in page.paragraphs:
            row += tokens_of(page.text, vocabulary.is_name, part.start, part.end).words
    return row


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """The training text as numbers: ``ids[i]`` is the place in ``words`` of the i-th token."""

    words: list[str]
    ids: NDArray[np.uint16]

    def id(self, word: str) -> int:
        """The number of a word."""
        return self.words.index(word)


def numbered(rows: Iterator[list[str]]) -> Row:
    """One long row of numbers; words met seldom become their class."""
    counts: Counter[str] = Counter()
    raw: dict[str, int] = {}
    parts = []
    for row in rows:
        counts.update(row)
        parts.append(np.array([raw.setdefault(word, len(raw)) for word in row], dtype=np.uint32))
    wanted = {word for pair in confusion_pairs() for word in pair}
    kept = {w: w if c >= SELDOM or w in wanted else class_of(w) for w, c in counts.items()}
    words = sorted(set(kept.values()))
    place = {word: i for i, word in enumerate(words)}
    turn = np.array([place[kept[word]] for word in raw], dtype=np.uint16)
    return Row(words=words, ids=turn[np.concatenate(parts)])
