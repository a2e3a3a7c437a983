"""A name without its capital.

What it finds
    A word that dictionaries have only with a capital: days, months, feast days, countries, languages
    and names of people (*monday, english, africa*). Words that are also common ones (*china, turkey,
    may, march*) are left alone.

Why a reader minds
    Children learn from the page which words are names.

Example
    On monday the goose flew to africa.

Better
    On Monday the goose flew to Africa.

When to let it stand
    In a letter that a child in the story wrote, or where the whole book is set without capitals.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.spelling._on_purpose import is_among_strangers, is_set_apart
from proofkit.checks.spelling._rows import rows
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.dictionary import Dictionary, dictionary
from proofkit.words.frequency import zipf
from proofkit.words.vocabulary import Use, Vocabulary

NAME = "spelling/name-in-lower-case"
NEEDS = frozenset({Need.TEXT})

# Rarer names may by chance be a made-up word or a word of another language.
_WELL_KNOWN = 4.0
_LETTERS = 4


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield an issue for each place; for a habit of the book, one with the other places as related."""
    known = dictionary(analysis.english)
    for use in analysis.vocabulary.uses.values():
        name = known.as_name(use.word)
        if (
            name is None
            or not use.lower
            or not _is_name_here(book, use, analysis.vocabulary, known)
        ):
            continue
        spans = [span for span in use.spans if book.quote(span).islower()]
        for span, related in rows(spans):
            yield issue_at(
                book,
                span,
                check=NAME,
                tier=Tier.ERROR,
                message="a name takes a capital",
                suggestions=(name,),
                confidence=0.8,
                related=related,
            )


def _is_name_here(book: Book, use: Use, vocabulary: Vocabulary, known: Dictionary) -> bool:
    if len(use.word) < _LETTERS or not use.word.isascii() or zipf(use.word) < _WELL_KNOWN:
        return False
    for span in use.spans:
        text = book.page(span.page).prose
        if is_set_apart(text, span.start, span.end):
            return False
        if is_among_strangers(book, span, vocabulary, known):
            return False
    return True
