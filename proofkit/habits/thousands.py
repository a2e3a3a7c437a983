"""Whether the book parts its thousands: 1,000 or 1000.

Years, pages and numbers on doors have no comma in any style. New Hart's Rules leaves the comma out of
four figures only where it is asked for, the Chicago manual (9.54) keeps it (both from memory).
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.habits._places import usage_of
from proofkit.habits.usage import Usage

MATTER = "thousands"
COMMA, PLAIN = FORMS = ("with a comma", "without a comma")

_NUMBER = re.compile(r"(?<![\w.,:/–-])(?:\d{1,3}(?:,\d{3})+|\d{4,7})(?![\w:/–-]|[.,]\d)")
_LABELLED = re.compile(
    r"\b(?:in|since|by|until|till|from|of|year|number|no\.|page|code|bus|room|"
    r"(?:January|February|March|April|May|June|July|August|September|October|November|December)"
    r"(?: \d+,?)?)[ \u00a0]$",
    re.IGNORECASE,
)
_THINGS = re.compile(r"[ \u00a0\n][a-z]")


def usage(book: Book, analysis: Analysis) -> Usage:  # noqa: ARG001 - every matter takes both
    """Where the book has a number of four figures and more with its comma, and where without."""
    return usage_of(MATTER, _places(book))


def in_form(written: str, form: str) -> str:
    """The number with or without its commas."""
    plain = int(written.replace(",", ""))
    return f"{plain:,}" if form == COMMA else str(plain)


def _places(book: Book) -> Iterator[tuple[str, Span]]:
    for page in book.pages:
        for match in _NUMBER.finditer(page.prose):
            if "," in match[0]:
                yield COMMA, page.span(*match.span())
            elif not _is_label(match):
                yield PLAIN, page.span(*match.span())


def _is_label(match: re.Match[str]) -> bool:
    """Whether the number may be a year, a page or a code: nothing follows that it could count."""
    before = match.string[max(0, match.start() - 20) : match.start()]
    return len(match[0]) == 4 and (
        _LABELLED.search(before) is not None or not _THINGS.match(match.string, match.end())
    )
