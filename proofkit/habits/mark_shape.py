"""Quotation marks and apostrophes: curly or straight.

Manuals print curly marks throughout (New Hart's Rules, Chicago); straight ones are what a typewriter
had. A straight mark after a figure is a foot, an inch or a minute, and counts for neither.
"""

from __future__ import annotations

import re

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.habits._places import usage_of
from proofkit.habits.usage import Usage

MATTER = "mark-shape"
FORMS = ("curly", "straight")

_DOUBLE = re.compile(r"(?P<curly>[“”])|(?<!\d)\"")
_SINGLE = re.compile(r"(?P<curly>[‘’])|(?<!\d)'")


def usage(book: Book, analysis: Analysis) -> Usage:  # noqa: ARG001 - every matter takes both
    """Every mark of the story."""
    both = [shapes(book, double=double).places for double in (True, False)]
    return usage_of(
        MATTER, ((form, span) for places in both for form in places for span in places[form])
    )


def shapes(book: Book, *, double: bool) -> Usage:
    """The double marks alone, or the single ones and apostrophes alone."""
    mark = _DOUBLE if double else _SINGLE
    return usage_of(
        MATTER,
        (
            ("curly" if match["curly"] else "straight", page.span(*match.span()))
            for page in book.pages
            for match in mark.finditer(page.prose)
        ),
    )
