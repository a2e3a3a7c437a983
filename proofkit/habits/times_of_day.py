"""How the book writes a time in figures: half past five as 5.30 or 5:30.

British books have a full point, American ones a colon (New Hart's Rules 21.2.2).
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.habits._places import usage_of
from proofkit.habits.usage import Usage

MATTER = "times-in-figures"
POINT, COLON = FORMS = ("5.30", "5:30")

_TIME = re.compile(r"(?<![\w£$€.,:/-])(?:[01]?\d|2[0-3])([.:])[0-5]\d(?![\d%°/-]|[.:]\d)")
# A figure with a point may be a measure or a price.
_MEASURE = re.compile(
    r"[ \u00a0]?(?:k?m|k?g|cm|mm|ml|l|ft|lbs?|oz|mph|m?etres|met(?:re|er)s|kilo\w*|litres?|liters?|"
    r"seconds|degrees|pounds|dollars|euros|rand|times|per cent|percent)\b"
)
_PRICED = re.compile(r"(?:costs?|paid|pay|price of|version|chapter|page|number)[ \u00a0]$")


def usage(book: Book, analysis: Analysis) -> Usage:  # noqa: ARG001 - every matter takes both
    """Where the book has a time of day with a full point, and where with a colon."""
    return usage_of(MATTER, _places(book))


def in_form(written: str, form: str) -> str:
    """The time with its mark changed: 5.30, 5:30."""
    return written.replace(":", ".") if form == POINT else written.replace(".", ":")


def _places(book: Book) -> Iterator[tuple[str, Span]]:
    for page in book.pages:
        for match in _TIME.finditer(page.prose):
            before = match.string[max(0, match.start() - 20) : match.start()].lower()
            if not _MEASURE.match(match.string, match.end()) and not _PRICED.search(before):
                yield (POINT if match[1] == "." else COLON), page.span(*match.span())
