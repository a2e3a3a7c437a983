"""A speech that closes and never opened.

What it finds
    A closing quotation mark without an opening one before it, looked for over pages too. The
    likeliest place for the missing mark is shown.

Why a reader minds
    The narrator's voice turns into a speaker's in mid-line, and nobody knows where.

Example
    I am coming," said the goat.

Better
    "I am coming," said the goat.

When to let it stand
    Hardly ever; if the closing mark is the slip, take that out instead.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.speech._extent import spoken_start
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.persons import told_in_past
from proofkit.words.quotation_marks import Mark
from proofkit.words.quotations import Quotation, quotations_of

NAME = "speech/missing-opening-mark"
NEEDS = frozenset({Need.TEXT})

_OPENERS = {"”": "“", "’": "‘", "»": "«", "“": "“"}
_WORD = re.compile(r"\s*(\S+)")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield each speech without its opening mark, at the likeliest place for it."""
    past = told_in_past(book)
    for quotation in quotations_of(book).speech:
        if quotation.opening is None and quotation.closing is not None:
            yield _issue(book, quotation, quotation.closing, past=past)


def _issue(book: Book, quotation: Quotation, closing: Mark, *, past: bool) -> Issue:
    page = book.page(closing.span.page)
    mark = _OPENERS.get(closing.text, closing.text)
    part = quotation.parts[-1] if quotation.parts else closing.span
    inner = page.prose[part.start : part.end]
    at, sure = spoken_start(inner, past=past)
    word = _WORD.match(inner, at)
    if word is None:
        span, reading = closing.span, ""
    else:
        span = page.span(part.start + word.start(1), part.start + word.end(1))
        reading = mark + word.group(1)
        if word.end(1) == len(inner):
            span = page.span(span.start, closing.span.end)
            reading += closing.text
    return issue_at(
        book,
        span,
        check=NAME,
        tier=Tier.ERROR,
        message="speech closes and never opened",
        suggestions=[reading],
        confidence=0.85 if sure else 0.65,
        related=[closing.span],
    )
