"""The full stop or comma after a word in marks that is no speech: inside the closing mark or outside.

British books put it by sense, which is outside where the words are only part of the sentence; American
ones always inside (New Hart's Rules 21.2; Chicago).
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.habits._places import usage_of
from proofkit.habits.usage import Usage
from proofkit.words.quotations import Quotation, quotations_of
from proofkit.words.reporting import has_reporting_verb, reports

MATTER = "stop-and-mark"
FORMS = ("inside", "outside")

_STOP = re.compile(r"[.,](?![.\w])")
_LAST_WORD = re.compile(r"[\w’'-]+[.,]?$")
_WORDS = 5  # more are said rather than named
_BEFORE = 40  # characters


def usage(book: Book, analysis: Analysis) -> Usage:  # noqa: ARG001 - every matter takes both
    """Every full stop or comma at the end of words in marks within a sentence; each with its last word."""
    quotations = quotations_of(book)
    found = (
        place
        for quotation in (*quotations.doubles, *quotations.singles)
        for place in _place(book, quotation)
    )
    return usage_of(MATTER, found)


def _place(book: Book, quotation: Quotation) -> Iterator[tuple[str, Span]]:
    span, closing = quotation.span, quotation.closing
    if span is None or closing is None or len(quotation.parts) != 1:
        return
    prose, inner = book.page(span.page).prose, book.quote(quotation.parts[0])
    word = _LAST_WORD.search(inner)
    if word is None or not _is_named(prose, span, inner):
        return
    start = quotation.parts[0].start + word.start()
    outside = _STOP.match(prose, span.end)
    if inner[-1] in ".,":
        yield "inside", Span(page=span.page, start=start, end=span.end)
    elif outside and word.group()[-1].isalnum():
        yield "outside", Span(page=span.page, start=start, end=outside.end())


def _is_named(prose: str, span: Span, inner: str) -> bool:
    """Whether the words are part of the sentence around them: a name, a word, a phrase."""
    before = prose[max(0, span.start - _BEFORE) : span.start]
    sentence = re.split(r"[.!?\n]", before)[-1]
    if not before.endswith(" ") or not before[-2:-1].isalpha() or reports(prose[span.end :]):
        return False
    return (
        not has_reporting_verb(sentence.rsplit(maxsplit=1)[-1] if sentence.strip() else "")
        and len(inner.split()) <= _WORDS
        and (inner[0].islower() or re.search(r"\b(?:called|named|words?)\b", sentence) is not None)
    )
