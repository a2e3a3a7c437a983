"""A story whose words can be followed from draft to draft, and what is found in it."""

from __future__ import annotations

import datetime
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from proofkit.book import Book, Page, Paragraph, Span
from proofkit.issue import Issue, Tier, issue_at, with_keys
from proofkit.own_file import read_own_file
from proofkit.rulings.entry import Entry, entry_for
from proofkit.rulings.judging import equals
from proofkit.rulings.keeping import add
from proofkit.rulings.ruling import Ruling, rulings_in

TODAY = datetime.date(2026, 11, 25)
CHECKS = {"spelling/slip": r"\b(?:mornign|honk-a-lonk)\b", "repetition/twice": r"\b(\w+) \1\b"}


@dataclass(eq=False)
class Word:
    """One word of the story, the same object in every draft."""

    text: str


@dataclass
class Draft:
    """A draft: pages of words."""

    pages: list[list[Word]] = field(default_factory=list)

    def book(self) -> Book:
        texts = [" ".join(word.text for word in page) for page in self.pages]
        return book_of(*texts)

    def span(self, words: Sequence[Word]) -> Span:
        """Where some words that follow one another on a page stand now."""
        number, page = next((n, p) for n, p in enumerate(self.pages, 1) if words[0] in p)
        at = page.index(words[0])
        start = sum(len(word.text) + 1 for word in page[:at])
        length = sum(len(word.text) + 1 for word in words) - 1
        return Span(page=number, start=start, end=start + length)


def draft_of(*texts: str) -> Draft:
    return Draft([[Word(word) for word in text.split()] for text in texts])


def book_of(*texts: str) -> Book:
    pages = tuple(
        Page(
            number=n, text=text, paragraphs=(Paragraph(start=0, end=len(text)),), label=f"Page {n}"
        )
        for n, text in enumerate(texts, 1)
    )
    return Book(path="goose.docx", title="The Goose", pages=pages)


def found(book: Book) -> tuple[Issue, ...]:
    """What two small checks find, with keys."""
    return with_keys(book, list(_found(book)))


def _found(book: Book) -> Iterator[Issue]:
    for page in book.pages:
        for check, pattern in CHECKS.items():
            for at in re.finditer(pattern, page.text):
                yield issue(book, page.span(*at.span()), check=check)


def issue(
    book: Book, span: Span, *, check: str = "spelling/slip", related: Sequence[Span] = ()
) -> Issue:
    return issue_at(
        book, span, check=check, tier=Tier.ERROR, message="a slip", confidence=0.9, related=related
    )


def entry(book: Book, issues: Sequence[Issue], one: Issue, because: str = "") -> Entry:
    return entry_for(
        book, one, equals=equals(book, issues, one), page="page 1", because=because, date=TODAY
    )


def ruled(file: Path, book: Book, issues: Sequence[Issue], *ones: Issue) -> tuple[Ruling, ...]:
    """The rulings that let ``ones`` stand, written down and read again."""
    add(file, [entry(book, issues, one) for one in ones])
    return rulings_in(read_own_file(file))
