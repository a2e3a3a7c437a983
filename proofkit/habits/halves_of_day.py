"""How the book writes the half of the day after an hour: 7 p.m., 7 pm, 7pm.

New Hart's Rules has 7 p.m. or 7 pm, the Chicago manual 7 p.m. (9.37, 10.41; from memory): a book keeps to one.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.habits._places import usage_of
from proofkit.habits.usage import Usage

MATTER = "a-m-and-p-m"
FORMS = ("7 p.m.", "7 pm", "7pm", "7p.m.", "7 P.M.", "7 PM", "7PM", "7P.M.")

_HALF = re.compile(
    r"\b(?P<hour>\d{1,2}(?:[.:]\d\d)?)(?P<space>[ \u00a0]?)(?:(?P<half>[ap])(?P<point>\.?)m\.?|"
    r"(?P<great>[AP])(?P<greatpoint>\.?)M\.?)(?![\w’'])"
)


def usage(book: Book, analysis: Analysis) -> Usage:  # noqa: ARG001 - every matter takes both
    """Where the book has an hour of the morning or the afternoon in which form.

    A stop that ends the sentence belongs to the place only where the half of the day has points.
    """
    return usage_of(MATTER, _places(book))


def in_form(written: str, form: str) -> str:
    """The hour with its half as in ``form``: "7.30AM" gives "7.30 a.m."."""
    match = _HALF.match(written)
    if not match:
        return written
    half = (match["half"] or match["great"]).lower()
    return match["hour"] + form[1:].replace("p", half).replace("P", half.upper())


def _places(book: Book) -> Iterator[tuple[str, Span]]:
    for page in book.pages:
        for match in _HALF.finditer(page.prose):
            pointed = match["point"] or match["greatpoint"]
            end = match.end() if pointed or not match[0].endswith(".") else match.end() - 1
            yield _form(match, bool(pointed)), page.span(match.start(), end)


def _form(match: re.Match[str], pointed: bool) -> str:  # noqa: FBT001 - said by its name
    letters = "p.m." if pointed else "pm"
    letters = letters.upper() if match["great"] else letters
    return "7" + (" " if match["space"] else "") + letters
