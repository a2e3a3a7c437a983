"""Marks inside marks: the other kind inside, or the same kind again.

Manuals alternate: double inside single in British books, single inside double in American ones, and so
on deeper (New Hart's Rules 4.14 and 21.2).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.habits._places import usage_of
from proofkit.habits.usage import Usage
from proofkit.words.quotation_marks import Mark, blocks_of
from proofkit.words.quotations import quotations_of

MATTER = "nesting"
FORMS = ("single inside double", "double inside single")
SAME = "the same marks again"

_PLAINLY = 0.3  # the most that a reading of a mark may cost
_LONG = 60  # characters; what is quoted inside a speech is short


def usage(book: Book, analysis: Analysis) -> Usage:  # noqa: ARG001 - every matter takes both
    """Every quotation inside a speech, mark to mark."""
    return usage_of(MATTER, (*_other_kind(book), *_same_kind(book)))


def _other_kind(book: Book) -> Iterator[tuple[str, Span]]:
    quotations = quotations_of(book)
    for quotation in quotations.other:
        span = quotation.span
        if span is None or not (quotation.opening and quotation.closing):
            continue
        plain = quotation.opening.opening + quotation.closing.closing <= _PLAINLY
        if plain and quotations.speaks(span.page, span.start):
            yield FORMS[not quotations.double], span


def _same_kind(book: Book) -> Iterator[tuple[str, Span]]:
    """Two marks of the speech's kind that open one after the other, and two that close."""
    double = quotations_of(book).double
    for block in blocks_of(book):
        marks = [mark for mark in block.marks if mark.double is double and mark.neither > _PLAINLY]
        for at in range(1, len(marks) - 2):
            inner = marks[at : at + 2]
            if _is_inside(marks[at - 1 : at + 3]) and _short(inner):
                yield SAME, Span(page=block.page, start=inner[0].span.start, end=inner[1].span.end)


def _is_inside(four: Sequence[Mark]) -> bool:
    opens = [mark.opening <= _PLAINLY < mark.closing for mark in four]
    closes = [mark.closing <= _PLAINLY < mark.opening for mark in four]
    return opens[0] and opens[1] and closes[2] and closes[3]


def _short(inner: Sequence[Mark]) -> bool:
    return 2 < inner[1].span.end - inner[0].span.start <= _LONG
