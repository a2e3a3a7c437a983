"""Where a new speaker begins: in a new paragraph, or further on in the same one.

Novels give each speaker a paragraph (New Hart's Rules, Chicago); picture books, with a few lines on a
page, often run speech on.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise

from proofkit.analysis import Analysis
from proofkit.book import Book, Page, Paragraph, Role, Span
from proofkit.habits._places import usage_of
from proofkit.habits.usage import Usage
from proofkit.words.quotations import quotations_of
from proofkit.words.reporting import SAYING

MATTER = "new-speaker"
FORMS = ("new paragraph", "run on")

_NOT_HIM = r"(?!(?:He|She|It|They|We|I|You|This|That|Then|And|But)\b)"
_NAME = rf"(?:[Tt]he |(?:Mr|Mrs|Miss|Aunt|Uncle) )?{_NOT_HIM}[A-Z]\w+|[Tt]he \w+"
_AFTER = re.compile(rf" ?(?:(?P<verb1>\w+) (?P<who1>{_NAME})|(?P<who2>{_NAME}) (?P<verb2>\w+))\b")
_NAMED = re.compile(r"[A-Z]\w+$")
_NEAR = 60  # characters


def usage(book: Book, analysis: Analysis) -> Usage:  # noqa: ARG001 - every matter takes both
    """Every speech whose named speaker is another than the one of the speech before it on the page."""
    return usage_of(MATTER, _places(book))


def _places(book: Book) -> Iterator[tuple[str, Span]]:
    for page in book.pages:
        speeches = list(_speeches(book, page))
        for (one, speaker, before), (other, next_speaker, span) in pairwise(speeches):
            if _are_two(speaker, next_speaker) and _answers(page, before, span, one, other):
                yield FORMS[one == other], span


def _speeches(book: Book, page: Page) -> Iterator[tuple[int, str, Span]]:
    """Each speech of the page that somebody named says: its paragraph's place, the speaker, its span."""
    for quotation in quotations_of(book).speech:
        span = quotation.span
        if span is None or span.page != page.number:
            continue
        match = _AFTER.match(page.prose, span.end, span.end + _NEAR)
        if match is None or (match["verb1"] or match["verb2"]).lower() not in SAYING:
            continue
        speaker = match["who1"] or match["who2"]
        yield _paragraph(page.paragraphs, span.start), speaker, span


def _paragraph(paragraphs: tuple[Paragraph, ...], at: int) -> int:
    return next(
        number
        for number, p in enumerate(paragraphs)
        if p.start <= at < p.end and p.role is Role.STORY
    )


def _are_two(one: str, other: str) -> bool:
    """Whether the two are two: both names, or both not. The rabbit may be Uncle Wiggily."""
    if one.lower().removeprefix("the ") == other.lower().removeprefix("the "):
        return False
    return (_NAMED.search(one) is None) == (_NAMED.search(other) is None)


def _answers(page: Page, before: Span, span: Span, one: int, other: int) -> bool:
    """Whether the second begins anew, right after the first: in the next paragraph, or after a stop."""
    between = page.prose[before.end : span.start]
    if one == other:
        return "\n" not in between and between.rstrip().endswith((".", "!", "?"))
    return other - one == 1
