"""How sure it is which English the book is in, and how to say so."""

from __future__ import annotations

from dataclasses import dataclass

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.settings import English, Settings
from proofkit.words.english import votes

_NAMED = {English.BRITISH: "British", English.AMERICAN: "American"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Certainty:
    """``sure``: the author chose the English, or the book shows it three to one.

    ``where`` ends a message: "in a book in British English".
    """

    sure: bool
    where: str


def certainty(book: Book, analysis: Analysis, settings: Settings) -> Certainty:
    """How sure it is that the book is in ``analysis.english``."""
    named = _NAMED[analysis.english]
    if settings.english is not None or votes(book, analysis.vocabulary).clear:
        return Certainty(sure=True, where=f"in a book in {named} English")
    return Certainty(sure=False, where=f"and the rest of the book seems {named}")
