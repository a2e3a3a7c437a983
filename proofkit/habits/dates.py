"""How the book writes a date: 3 May, 3rd May, May 3.

British books mostly have the day first, American ones the month (New Hart's Rules 21.2).
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.habits._number_words import ordinal_in_figures
from proofkit.habits._places import usage_of
from proofkit.habits.usage import Usage
from proofkit.words.vocabulary import opens_sentence

MATTER = "dates"
FORMS = ("3 May", "3rd May", "the 3rd of May", "May 3", "May 3rd")

_MONTH = (
    r"(?:January|February|March|April|May|June|July|August|September|October|November|December)"
)
_DATE = re.compile(
    rf"\b(?:(?P<the>[Tt]he[ \u00a0])?(?P<day>\d{{1,2}})(?P<th>st|nd|rd|th)?(?P<of>[ \u00a0]of)?[ \u00a0](?P<month>{_MONTH})"
    rf"|(?P<month2>{_MONTH})[ \u00a0](?:the[ \u00a0])?(?P<day2>\d{{1,2}})(?P<th2>st|nd|rd|th)?)(?![\w:.]\d|\w)"
)


def usage(book: Book, analysis: Analysis) -> Usage:  # noqa: ARG001 - every matter takes both
    """Where the book has a day and month in which form; the year is not looked at."""
    return usage_of(MATTER, _places(book))


def in_form(written: str, form: str) -> str:
    """The date as in ``form``: "May 3" gives "3rd May"."""
    match = _DATE.match(written)
    if not match:
        return written
    day, month = int(match["day"] or match["day2"]), match["month"] or match["month2"]
    figure = ordinal_in_figures(day) if "3rd" in form else str(day)
    if form.startswith("May"):
        return f"{month} {figure}"
    if form.startswith("the"):
        return f"{'The' if written.startswith('The') else 'the'} {figure} of {month}"
    return f"{figure} {month}"


def _places(book: Book) -> Iterator[tuple[str, Span]]:
    for page in book.pages:
        for match in _DATE.finditer(page.prose):
            if 1 <= int(match["day"] or match["day2"]) <= 31 and not _is_verb(match):
                start = match.start() if match["of"] or not match["day"] else match.start("day")
                yield _form(match), page.span(start, match.end())


def _is_verb(match: re.Match[str]) -> bool:
    """Whether it may be no month that opens the sentence: "May 3 of us come in?", "March 3 miles"."""
    return match["month2"] in ("May", "March") and opens_sentence(match.string, match.start())


def _form(match: re.Match[str]) -> str:
    if match["of"]:
        return "the 3rd of May"
    if match["day"]:
        return "3rd May" if match["th"] else "3 May"
    return "May 3rd" if match["th2"] else "May 3"
