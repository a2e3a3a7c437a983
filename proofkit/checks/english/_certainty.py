"""How sure it is which English the book is in, and how to say so."""

from __future__ import annotations

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.settings import English, Settings
from proofkit.words.english import votes

_NAMED = {English.BRITISH: "British", English.AMERICAN: "American"}


def is_sure(book: Book, analysis: Analysis, settings: Settings) -> bool:
    """Whether the author chose the English, or the book shows it three to one."""
    return settings.english is not None or votes(book, analysis.vocabulary).clear


def in_the_book(book: Book, analysis: Analysis, settings: Settings) -> str:
    """The end of a message: "in a book in British English"."""
    named = _NAMED[analysis.english]
    if is_sure(book, analysis, settings):
        return f"in a book in {named} English"
    return f"and the rest of the book seems {named}"


def how_often(count: int) -> str:
    """A count in words: "1 time", "6 times"."""
    return f"{count} time" if count == 1 else f"{count} times"
