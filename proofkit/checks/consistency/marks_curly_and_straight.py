"""Curly and straight marks, mixed.

What it finds
    Straight quotation marks or apostrophes (" ') in a book that otherwise has curly ones (“ ” ‘ ’),
    or the other way round. Double marks are counted apart from single ones and apostrophes.

Why a reader minds
    In print the two shapes stand side by side and one of them looks like a mistake. They creep in
    where text was pasted from elsewhere.

Example
    “Come in,” said Tock. "It's warm inside."

Better
    “Come in,” said Tock. “It’s warm inside.”

When to let it stand
    In feet and inches. Otherwise change the fewer ones, and look over the whole book once more.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from itertools import pairwise

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.checks.consistency._odd_marks import Norm, norm_of
from proofkit.habits import mark_shape
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings

NAME = "consistency/marks-curly-and-straight"
NEEDS = frozenset({Need.TEXT})

_DOUBLE, _CURLY = '"“”', "“”‘’"
_OPENS_AFTER = re.compile(r"(?:^|[\s(\[–—-]|[\"“'‘])$")
_ELIDED = re.compile(r"(?i)(?:tis|twas|twill|em|til|cause|bout|n|ere|ello|appen)\b")
_CLEARLY = 3  # times as often
# A longer row would hide what else is wrong with its words.
_SHORT = 20  # characters
_MOST = 4  # marks


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue for the double marks, one for the others; on the shape that the book has less often."""
    for double in (True, False):
        usage = mark_shape.shapes(book, double=double)
        norm = norm_of(usage, settings, forms=mark_shape.FORMS)
        if norm and (odd := usage.against(norm.form)):
            yield _issue(book, list(odd), norm)


def _issue(book: Book, odd: list[Span], norm: Norm) -> Issue:
    shape = "straight" if norm.form == "curly" else "curly"
    together = _together(book, odd)
    first, last = together[0], together[-1]
    usual = (
        f"your style sheet has {norm.form} ones"
        if norm.decided
        else f"elsewhere {norm.form} ones ({norm.elsewhere})"
    )
    return issue_at(
        book,
        Span(page=first.page, start=first.start, end=last.end),
        check=NAME,
        tier=Tier.ERROR if norm.decided or norm.times >= _CLEARLY * len(odd) else Tier.QUERY,
        message=f"a {shape} mark; {usual}",
        suggestions=(_turned(book, together, _straight if shape == "curly" else _curly),),
        confidence=0.9,
        related=odd[len(together) :],
    )


def _together(book: Book, marks: list[Span]) -> list[Span]:
    """The first mark, with the one that closes what it opens if that is near: "Not now!" has two."""
    first = marks[0]
    text = book.page(first.page).prose
    for count, mark in enumerate(marks[1:_MOST], 2):
        if mark.page != first.page or mark.end - first.start > _SHORT:
            break
        within = text[first.start : mark.end]
        if not re.search(r"\s", within) or (_opens(text, first) and not _opens(text, mark)):
            return marks[:count] if "\n" not in within else [first]
    return [first]


def _turned(book: Book, marks: list[Span], turned: Callable[[Book, Span], str]) -> str:
    parts = [turned(book, marks[0])]
    for before, mark in pairwise(marks):
        parts.append(book.page(mark.page).text[before.end : mark.start])
        parts.append(turned(book, mark))
    return "".join(parts)


def _straight(book: Book, span: Span) -> str:
    return '"' if book.quote(span) in _DOUBLE else "'"


def _curly(book: Book, span: Span) -> str:
    text = book.page(span.page).prose
    opens = _opens(text, span)
    if book.quote(span) == '"':
        return "“" if opens else "”"
    return "‘" if opens and not _ELIDED.match(text, span.end) else "’"


def _opens(text: str, span: Span) -> bool:
    """Whether a mark stands where one opens: after a space or a bracket, and before a word."""
    before = text[max(0, span.start - 1) : span.start]
    return _OPENS_AFTER.search(before) is not None and bool(text[span.end : span.end + 1].strip())
