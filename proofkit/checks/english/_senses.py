"""Uses of a spelling that belong to the other English, told by the spelling or by the words before it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from proofkit.book import Book, Span
from proofkit.checks.english._by_sense import uses_by_sense
from proofkit.settings import English
from proofkit.words.variants import cased_like, other_english, variants
from proofkit.words.vocabulary import Use, Vocabulary, opens_sentence

# Terms that families choose for themselves in any English.
_KIN = frozenset({"mom", "moms", "mum", "mums"})
_AUNTS = frozenset({"aunty", "aunties", "auntie"})


@dataclass(frozen=True, slots=True, kw_only=True)
class ForeignUse:
    """A form at home in the other English: its places, and what it is in the book's English.

    ``by_sense``: the spelling has its place in both, but not in this sense. ``why`` is empty unless more
    is to be said than that the spelling is the other English's.
    """

    word: str
    better: str
    spans: tuple[Span, ...]
    by_sense: bool
    why: str = ""


def foreign_uses(book: Book, vocabulary: Vocabulary, english: English) -> Iterator[ForeignUse]:
    """All uses of the other English's spellings, names left out, in the book's order."""
    found = [*_by_spelling(book, vocabulary, english), *_by_sense(book, english)]
    return iter(sorted(found, key=lambda use: use.spans[0]))


def _by_spelling(book: Book, vocabulary: Vocabulary, english: English) -> Iterator[ForeignUse]:
    for word, use in vocabulary.uses.items():
        better = _in_english(word, english)
        if better is None or better == word or _is_familys_choice(word, vocabulary):
            continue
        spans = tuple(
            s for s in use.spans if word in _KIN or not _is_name(book, s, use, vocabulary)
        )
        if spans:
            yield ForeignUse(
                word=word,
                better=cased_like(better, book.quote(spans[0])),
                spans=spans,
                by_sense=word in _KIN,
            )


def _in_english(word: str, english: English) -> str | None:
    """The word in that English, part by part where it is hyphened; None where nothing is foreign."""
    table, other = variants(), other_english(english)
    parts = [
        table.in_english(part, english) if table.belongs_to(part) is other else part
        for part in re.split(r"([-‑])", word)
    ]
    return "".join(part for part in parts if part) if None not in parts else None


def _is_familys_choice(word: str, vocabulary: Vocabulary) -> bool:
    """Whether it is a word for a mother or an aunt, unless the book has both Mum and Mom."""
    if word in _AUNTS:
        return True
    return word in _KIN and not (vocabulary.count("mum") and vocabulary.count("mom"))


def _is_name(book: Book, span: Span, use: Use, vocabulary: Vocabulary) -> bool:
    """Capitals inside a sentence make a name, and so does a word the book treats as one."""
    if variants().takes_capital(use.word):
        return False
    if vocabulary.is_name(use.word):
        return True
    form = book.quote(span)
    capital = form[:1].isupper() and not (form.isupper() and len(form) > 1)
    return capital and not opens_sentence(book.page(span.page).prose, span.start)


def _by_sense(book: Book, english: English) -> Iterator[ForeignUse]:
    for use in uses_by_sense(book, english):
        if not (use.word in _KIN and not _has(book, use.better)):
            yield ForeignUse(
                word=use.word, better=use.better, spans=use.spans, by_sense=True, why=use.why
            )


def _has(book: Book, word: str) -> bool:
    return any(re.search(rf"(?i)\b{word}\b", page.prose) for page in book.pages)
