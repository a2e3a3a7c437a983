"""Nouns that the book has with a capital and without: the King, a king."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from proofkit.book import Span
from proofkit.habits.usage import Usage
from proofkit.stylesheet.ground import Ground, row_of
from proofkit.stylesheet.sheet import Basis, Row
from proofkit.words.titles import KIN_NAMES
from proofkit.words.vocabulary import Use, opens_sentence

_NOUNS = ("NOUN", "PROPN")


def capital_rows(ground: Ground) -> Iterator[Row]:
    """Each such noun that is no part of a name. A capital that a sentence asks for tells nothing.

    Kin words (Granny, her granny) stand with the names.
    """
    names = {part.lower() for one in ground.named for form in one.forms for part in form.split()}
    for word, use in ground.analysis.vocabulary.uses.items():
        if use.capitals_inside and use.lower and word not in names | KIN_NAMES:
            row = _row(ground, use)
            if row:
                yield row


def _row(ground: Ground, use: Use) -> Row | None:
    capitals = tuple(span for span in use.spans if _has_its_own_capital(ground, span))
    if not capitals:
        return None
    form = use.word[0].upper() + use.word[1:]
    small = tuple(span for span in use.spans if ground.book.quote(span) == use.word)
    usage = Usage(matter=use.word, places={form: capitals, use.word: small})
    decided = next((word for word in ground.words if word.lower() == use.word), None)
    row = row_of(usage, decided)
    if row and row.basis is Basis.OPEN:
        return replace(row, term=f"{form} or {use.word}")
    return row


def _has_its_own_capital(ground: Ground, span: Span) -> bool:
    """Whether it is a noun with a capital where no sentence begins, and is not all in capitals."""
    written = ground.book.quote(span)
    if not written[0].isupper() or written.isupper():
        return False
    if opens_sentence(ground.book.page(span.page).prose, span.start):
        return False
    tokens = ground.analysis.page(span.page).tokens
    return any(token.start == span.start and token.pos in _NOUNS for token in tokens)
