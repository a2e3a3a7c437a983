"""The ellipsis: one character, three points, or points with spaces between.

New Hart's Rules sets three points evenly spaced or the one character; Chicago sets three spaced points.
Whichever it is, one book has one.
"""

from __future__ import annotations

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.habits._ellipses import ellipses
from proofkit.habits._places import usage_of
from proofkit.habits.usage import Usage

MATTER = "ellipsis"
FORMS = ("one character", "three points", "spaced points")


def usage(book: Book, analysis: Analysis) -> Usage:  # noqa: ARG001 - every matter takes both
    """Every ellipsis."""
    return usage_of(MATTER, ((form_of(own.text), own.span) for own in ellipses(book)))


def form_of(text: str) -> str:
    """The form of one ellipsis; one of four points has its sentence's full stop with it."""
    if "…" in text:
        return "one character"
    return "spaced points" if " " in text else "three points"
