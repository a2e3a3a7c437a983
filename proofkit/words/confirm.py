"""The words that no dictionary has and the book uses on purpose: names, made-up words, sounds."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass

from proofkit.book import Book, Span
from proofkit.words.dictionary import Dictionary
from proofkit.words.vocabulary import Use, Vocabulary

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
    found = [
        WordToConfirm(word=use.usual_form, count=use.count, pages=use.pages)
        for use in vocabulary.uses.values()
        if use.word not in wrong and _is_strange(use, known)
    ]
    return tuple(sorted(found, key=lambda each: (-each.count, each.word.lower())))


def _is_strange(use: Use, known: Dictionary) -> bool:
    """Whether no form that the book has of the word is known."""
    return not any(
        known.knows(form) or known.knows_elsewhere(form) or _INITIALS.fullmatch(form)
        for form in use.forms
    )
