"""A mark that belongs to nothing.

What it finds
    Two different stops that cannot stand together (*?,* or *.,* or *,.*), a full stop or comma that
    begins a page or a paragraph, one that stands alone after another, and a quotation mark with
    space on both sides that pairs with nothing.

Why a reader minds
    It is left over from a change, and it makes the reader stumble.

Example
    "Who is there?," asked the owl.

Better
    "Who is there?" asked the owl.

When to let it stand
    After a short form (*etc.,*) both marks are right, and are left alone.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Page, Role
from proofkit.checks.check import Need
from proofkit.checks.spacing._gaps import undisturbed
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words import nearby
from proofkit.words.abbreviations import ends_in_abbreviation
from proofkit.words.quotation_marks import closing_for
from proofkit.words.quotations import Quotation, quotations_of
from proofkit.words.reporting import reports

NAME = "marks/stray-mark"
NEEDS = frozenset({Need.TEXT})

# A stop and a comma, in either order, that cannot both be meant; and what is kept.
_PAIR = re.compile(
    r"(?<=[\w\"”’)])(?:(?P<strong>[?!]),|(?P<stop>(?<!\.)\.),|,(?P<late>[.?!])(?!\.)"
    r"|[,;](?P<second>[;:])|;(?P<comma>,)|:(?P<full>\.)(?!\.)|\.(?P<mark>[?!])(?<!\.\.[?!])(?!\w))"
    r"(?=\s|$|[\"”’'])"
)
_NUMBER = re.compile(r"(?:\d|\b[A-Zivx]+)\.$")
_ALONE = re.compile(r"(?<=[.!?,]) +[.,;](?=\s|$)(?! *\.)")
_AT_START = re.compile(r"\s*([.,;:!?])(?![.\w]) *(?=\w)")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield each mark that must go."""
    quotations = quotations_of(book)
    for page in book.pages:
        for start, end, reading in (*_pairs(page), *_alone(page), *_at_start(page)):
            if undisturbed(page, start, end):
                closed = reading + _closing_mark(page, start, end, quotations.speech)
                yield _issue(book, page, start, end, closed)
    for mark in quotations.strays:
        page = book.page(mark.span.page)
        before = nearby.before(page.prose, mark.span.start)
        start = mark.span.start - (len(before) - len(before.rstrip(" ")))
        if mark.double and undisturbed(page, start, mark.span.end):
            yield _issue(book, page, start, mark.span.end, "")


def _closing_mark(page: Page, start: int, end: int, speech: Iterable[Quotation]) -> str:
    """The mark that a speech lacks where it ends just here and the words after it say who spoke."""
    for quotation in speech:
        here = any(
            part.page == page.number and part.start <= start < part.end for part in quotation.parts
        )
        if here and quotation.opening and not quotation.closing and reports(page.prose[end:]):
            return closing_for(quotation.opening.text)
    return ""


def _pairs(page: Page) -> Iterator[tuple[int, int, str]]:
    for match in _PAIR.finditer(page.prose):
        before = nearby.before(page.prose, match.start() + 1)
        if match.group()[0] == "." and (ends_in_abbreviation(before) or _NUMBER.search(before)):
            continue
        kept = next(mark for mark in match.groups() if mark)
        yield match.start(), match.end(), kept


def _alone(page: Page) -> Iterator[tuple[int, int, str]]:
    for match in _ALONE.finditer(page.prose):
        if not page.prose.endswith(" .", 0, match.start()):
            yield match.start(), match.end(), ""


def _at_start(page: Page) -> Iterator[tuple[int, int, str]]:
    for paragraph in page.paragraphs:
        if paragraph.role is not Role.STORY:
            continue
        match = _AT_START.match(page.prose, paragraph.start, paragraph.end)
        if match:
            yield match.start(1), match.end(), ""


def _issue(book: Book, page: Page, start: int, end: int, reading: str) -> Issue:
    return issue_at(
        book,
        page.span(start, end),
        check=NAME,
        tier=Tier.ERROR,
        message="a mark that belongs to nothing",
        suggestions=[reading],
        confidence=0.85,
    )
