"""The verse of a book, read once for all checks of this family."""

from __future__ import annotations

from functools import lru_cache

from proofkit.book import Book
from proofkit.reading.verse.find import verse_of
from proofkit.reading.verse.poem import Verse
from proofkit.settings import English


# One book is checked at a time, and three checks ask for the same reading of it.
@lru_cache(maxsize=1)
def verse_read(book: Book, english: English) -> Verse | None:
    """The verse of a book, or None where it has none."""
    return verse_of(book, english)
