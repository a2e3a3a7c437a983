"""What somebody thinks, word for word: in italics, in marks or plain.

All three are used; one book has one (New Hart's Rules lets the author choose; Chicago likewise).
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Page, Span
from proofkit.habits._places import usage_of
from proofkit.habits._typeface import FORMS as DRESSES
from proofkit.habits._typeface import ITALICS, MARKS, PLAIN, dress_of
from proofkit.habits.usage import Usage
from proofkit.words.persons import speaks_in_person
from proofkit.words.quotations import Quotations, quotations_of

MATTER = "thoughts"
FORMS = DRESSES

_WHO = r"(?:[Hh]e|[Ss]he|[Ii]t|[Tt]hey|I|[Tt]he (?:\w+ )?\w+|(?:Mr |Mrs |Miss )?[A-Z]\w+)"
_VERB = r"(?:thought|wondered|thinks|wonders)"
# "Why me?" thought Pip. Why me? he thought. But a plain "It was late, he thought" tells.
_AFTER = re.compile(
    rf"(?P<stop>[,?!…])(?P<mark>[\"'”’]?) (?:{_VERB} {_WHO}|{_WHO} {_VERB})\b(?=[.,:;!?—–]| to )"
)
# He thought, "Why me?"
_BEFORE = re.compile(
    rf"\b{_WHO} {_VERB}(?: to (?:him|her|it|them)sel(?:f|ves))?[,:] (?P<mark>[\"'“‘]?)(?=[^\W\d_])"
)
_START = re.compile(r"[.!?\n\"“‘«]\s*|(?:^|\s)'")
_END = re.compile(r"[.!?\n\"”»,]")
_TOLD = re.compile(
    r"\b(?:was|were|had|did|could|would|might|he|she|they|his|her|their)\b", re.IGNORECASE
)
_SHORT = 4  # words; so few may lack a verb and a person
_LONGEST = 200  # characters


def usage(book: Book, analysis: Analysis) -> Usage:  # noqa: ARG001 - every matter takes both
    """Every thought that a verb says is one, without its marks."""
    quotations = quotations_of(book)
    return usage_of(MATTER, (place for page in book.pages for place in _on_page(page, quotations)))


def _on_page(page: Page, quotations: Quotations) -> Iterator[tuple[str, Span]]:
    prose = page.prose
    for match in _AFTER.finditer(prose):
        end = match.start("stop")
        begins = [found.end() for found in _START.finditer(prose, max(0, end - _LONGEST), end)]
        start = begins[-1] if begins else max(0, end - _LONGEST)
        dress = _dress(page, start, end, match["mark"], quotations)
        # "Still, he thought, it was late" tells; only what ends there is a thought word for word.
        goes_on = match["stop"] == "," and prose[match.end() : match.end() + 1] != "."
        if dress and not (dress == PLAIN and goes_on):
            yield dress, page.span(start, end)
    for match in _BEFORE.finditer(prose):
        stop = _END.search(prose, match.end())
        end = stop.start() if stop else len(prose)
        if dress := _dress(page, match.end(), end, match["mark"], quotations):
            yield dress, page.span(match.end(), end)


def _dress(page: Page, start: int, end: int, mark: str, quotations: Quotations) -> str:
    """The dress of a thought, or "" where the words may be told or are said aloud."""
    if dress_of(page, start, end) == ITALICS:
        return ITALICS
    if mark:
        return MARKS
    words = page.prose[start:end]
    direct = words[:1].isupper() and (speaks_in_person(words) or len(words.split()) <= _SHORT)
    if quotations.speaks(page.number, start) or not direct or _TOLD.search(words):
        return ""
    return PLAIN
