"""Mr or Mr.: without a point in British books, with one in American ones (New Hart's Rules 21)."""

from __future__ import annotations

import re

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.habits._places import usage_of
from proofkit.habits.usage import Usage

MATTER = "title-point"
FORMS = ("Mr", "Mr.")

_TITLE = re.compile(r"(?<![\w'’-])(?:Mr|Mrs|Ms|Dr)\b(?P<point>\.?)(?=\s+\w)")


def usage(book: Book, analysis: Analysis) -> Usage:  # noqa: ARG001 - every matter takes both
    """Every Mr, Mrs, Ms and Dr before a word, its point with it."""
    return usage_of(
        MATTER,
        (
            (FORMS[bool(match["point"])], page.span(*match.span()))
            for page in book.pages
            for match in _TITLE.finditer(page.prose)
        ),
    )
