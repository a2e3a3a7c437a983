"""The words that no dictionary has and the book uses on purpose: names, made-up words, sounds."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass

from proofkit.book import Book, Span
from proofkit.words.dictionary import Dictionary
from proofkit.words.quotations import quotations_of
from proofkit.words.vocabulary import Use, Vocabulary

# An opening mark before a clipped word is a slip of the machine that curled the marks.
_APOSTROPHES = ("'", "’", "‘")
_INITIALS = re.compile(r"[A-Z](?:['’\-‑][A-Z])*")


@dataclass(frozen=True, slots=True, kw_only=True)
class WordToConfirm:
    """A word for the author to confirm once: as the book writes it, how often, and on which pages."""

    word: str
    count: int
    pages: tuple[int, ...]


def words_to_confirm(
    book: Book, vocabulary: Vocabulary, known: Dictionary, *, raised: Iterable[Span] = ()
) -> tuple[WordToConfirm, ...]:
    """Each word of the story that the dictionary lacks, once, most used first.

    Words at the ``raised`` places, which are shown as misspellings, are left out, and so are the
    spellings of the other English, which have their own check.
    """
    wrong = {book.quote(span).lower() for span in raised}
    marks = _marks_of_quotations(book)
    found = [
        WordToConfirm(word=_as_clipped(book, use, marks), count=use.count, pages=use.pages)
        for use in vocabulary.uses.values()
        if use.word not in wrong and _is_strange(use, known)
    ]
    return tuple(sorted(found, key=lambda each: (-each.count, each.word.lower())))


def _as_clipped(book: Book, use: Use, marks: frozenset[Span]) -> str:
    """The word's usual form, with the apostrophe that its first place has before or after it: ’im, goin’."""
    span = next(span for span in use.spans if book.quote(span) == use.usual_form)
    text = book.page(span.page).text
    before = Span(page=span.page, start=span.start - 1, end=span.start)
    after = Span(page=span.page, start=span.end, end=span.end + 1)
    first, last = (
        mark if mark in _APOSTROPHES and place not in marks else ""
        for place in (before, after)
        for mark in [text[max(place.start, 0) : place.end]]
    )
    quoted = first and last
    owned = last and use.usual_form.endswith("s")
    return use.usual_form if quoted or owned else first + use.usual_form + last


def _marks_of_quotations(book: Book) -> frozenset[Span]:
    """Every mark that opens or closes a quotation."""
    quotations = quotations_of(book)
    ends = (
        mark.span
        for quotation in (*quotations.singles, *quotations.doubles)
        for mark in (quotation.opening, quotation.closing, *quotation.reopenings)
        if mark
    )
    return frozenset((*ends, *(mark.span for mark in quotations.strays)))


def _is_strange(use: Use, known: Dictionary) -> bool:
    """Whether no form that the book has of the word is known."""
    return not any(
        known.knows(form) or known.knows_elsewhere(form) or _INITIALS.fullmatch(form)
        for form in use.forms
    )
