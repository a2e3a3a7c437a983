"""One space or two after a full stop. Printers use one (New Hart's Rules, Chicago, GPO manual)."""

from __future__ import annotations

import re

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.habits._places import usage_of
from proofkit.habits.usage import Usage

MATTER = "space-after-stop"
FORMS = ("one", "two")

_STOP = re.compile(r"(?<=\w)[.!?][\"'”’)]*(?P<gap> {1,2})(?=[\"'“‘(]?[A-Z])")


def usage(book: Book, analysis: Analysis) -> Usage:  # noqa: ARG001 - every matter takes both
    """Every full stop, question mark or exclamation mark with a sentence after it in its line."""
    return usage_of(
        MATTER,
        (
            (FORMS[len(match["gap"]) - 1], page.span(*match.span("gap")))
            for page in book.pages
            for match in _STOP.finditer(page.prose)
        ),
    )
