"""Whether the book writes its ordinals in words or in figures: the third frog, the 3rd frog.

Dates are another matter, and so are streets, centuries and kings. New Hart's Rules and the Chicago manual
(9.6) write them as they write other numbers (from memory).
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.habits._number_words import ORDINAL, ordinal, ordinal_in_figures, ordinal_value
from proofkit.habits._places import usage_of
from proofkit.habits.usage import Usage

MATTER = "ordinals"
WORDS, FIGURES = FORMS = ("in words", "in figures")

_ORDINAL = re.compile(
    rf"(?<![\w’'-])(?:(?P<figure>\d{{1,2}})(?:st|nd|rd|th)|(?P<word>{ORDINAL}))(?![\w’'-])",
    re.IGNORECASE,
)
_MONTH = r"(?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)[a-z]*"
_AFTER = re.compile(rf"[ \u00a0\n](?:of {_MONTH}|century|[A-Z])")
_BEFORE = re.compile(rf"(?:\b{_MONTH}|\b[Tt]he {_MONTH}|\bon the)[ \u00a0]$")
# "Wait a second", "for a second": a moment.
_MOMENT = re.compile(r"\b(?:a|one|this|that|every|each|split|half)[ \u00a0]$", re.IGNORECASE)


def usage(book: Book, analysis: Analysis) -> Usage:  # noqa: ARG001 - every matter takes both
    """Where the book has an ordinal up to ninety-ninth in words, and where in figures."""
    return usage_of(MATTER, _places(book))


def in_form(written: str, form: str) -> str:
    """An ordinal in words or in figures: "3rd" gives "third"."""
    digits = re.match(r"\d+", written)
    number = int(digits[0]) if digits else ordinal_value(written) or 0
    return ordinal_in_figures(number) if form == FIGURES else ordinal(number)


def _places(book: Book) -> Iterator[tuple[str, Span]]:
    for page in book.pages:
        for match in _ORDINAL.finditer(page.prose):
            before = match.string[max(0, match.start() - 20) : match.start()]
            if _AFTER.match(match.string, match.end()) or _BEFORE.search(before):
                continue
            if match["figure"] and 1 <= int(match["figure"]) <= 99:
                yield FIGURES, page.span(*match.span())
            elif match["word"] and not _MOMENT.search(before):
                yield WORDS, page.span(*match.span())
