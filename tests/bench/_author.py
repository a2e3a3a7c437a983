"""An author at work: a manuscript whose every word and slip can be followed through any edit."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

from proofkit.book import Book, Page, Paragraph, Span
from proofkit.reading.sentences import sentences

_CORE = re.compile(r"[^\W_]+(?:['’-][^\W_]+)*")


@dataclass(eq=False)
class Word:
    """One word with its marks, the same object in every draft, and what stands after it in a sentence."""

    text: str
    gap: str = " "

    @property
    def core(self) -> str:
        found = _CORE.search(self.text)
        return found.group() if found else ""


@dataclass(eq=False)
class Sentence:
    words: list[Word]


@dataclass(eq=False)
class Leaf:
    """A page: its label and its paragraphs."""

    label: str
    paragraphs: list[list[Sentence]]


@dataclass(eq=False)
class Slip:
    """A slip that the author made once, may have mended, and may make again.

    ``words``   those at fault: the first is in the text always
    ``others``  sentences of the other places, for a slip that has several
    ``right``, ``wrong``  the text of the first word without the slip and with it
    """

    kind: str
    sentence: Sentence
    words: list[Word]
    right: str = ""
    wrong: str = ""
    here: bool = True
    let_stand: bool = False
    others: list[tuple[Sentence, Word]] = field(default_factory=list)


@dataclass
class Manuscript:
    """The text as it is now, and all slips ever made in it."""

    leaves: list[Leaf]
    slips: list[Slip] = field(default_factory=list)

    def sentences(self) -> list[Sentence]:
        return [s for leaf in self.leaves for paragraph in leaf.paragraphs for s in paragraph]

    def words(self) -> list[Word]:
        return [word for sentence in self.sentences() for word in sentence.words]

    def rendered(self) -> tuple[Book, dict[Word, Span]]:
        """The book as it is read, and where each word stands in it."""
        pages, places = [], {}
        for number, leaf in enumerate(self.leaves, 1):
            text, blocks = "", []
            for paragraph in leaf.paragraphs:
                text += "\n\n" if text else ""
                start = len(text)
                words = [word for sentence in paragraph for word in sentence.words]
                for word in words:
                    places[word] = Span(
                        page=number, start=len(text), end=len(text) + len(word.text)
                    )
                    text += word.text + (word.gap if word is not words[-1] else "")
                blocks.append(Paragraph(start=start, end=len(text)))
            page = Page(number=number, text=text, paragraphs=tuple(blocks), label=leaf.label)
            pages.append(page)
        return Book(path="story.docx", title="", pages=tuple(pages)), places


def manuscript_of(book: Book) -> Manuscript:
    """A clean manuscript of what the book has on its pages."""
    leaves = [Leaf(label=page.label, paragraphs=list(_paragraphs(page))) for page in book.pages]
    return Manuscript(leaves=leaves)


def _paragraphs(page: Page) -> Iterator[list[Sentence]]:
    for paragraph in page.paragraphs:
        block = page.text[paragraph.start : paragraph.end]
        parts = [_sentence(block, start, end) for start, end in sentences(block)]
        if parts:
            yield parts


def _sentence(block: str, start: int, end: int) -> Sentence:
    found = list(re.finditer(r"(\S+)(\s*)", block[start:end]))
    words = [Word(text=f.group(1), gap=f.group(2) or " ") for f in found]
    following = re.match(r"\s+", block[end:])
    words[-1].gap = following.group() if following else " "
    return Sentence(words=words)


def stories() -> list[Path]:
    """The invented stories that the project has."""
    tests = Path(__file__).parents[1]
    return sorted((tests / "stories").glob("*.md")) + sorted(
        (tests.parent / "examples" / "clean").glob("*.md")
    )
