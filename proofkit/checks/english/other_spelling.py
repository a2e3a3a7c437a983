"""The spelling of the other English.

What it finds
    A word spelt as in American English in a British book, or the other way round. The English is
    the one you chose; if you chose none, the one that most of the book's spellings, words and marks are at home in.
    Spellings that both have (axe, realize, towards) are left alone, and so are names, and words that
    your style sheet has in that spelling.

Why a reader minds
    A book is in one English. A lone "color" looks like a slip, and an adult reading aloud stops.

Example
    Her favourite cat was gray.

Better
    Her favourite cat was grey.

When to let it stand
    In a name or a title that is really spelt so, in a letter or a sign from the other country, or
    when the book is meant for the other country: then choose its English.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.english._certainty import certainty
from proofkit.checks.english._senses import foreign_uses
from proofkit.habits.endings import MATTER, ending_of
from proofkit.habits.past_forms import WORDS
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import English, Settings
from proofkit.words.variants import other_english, variants

NAME = "english/other-spelling"
NEEDS = frozenset({Need.TEXT})

_KIND = {English.BRITISH: "a British spelling", English.AMERICAN: "an American spelling"}


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue a word, with its other places as related."""
    english = analysis.english
    known = certainty(book, analysis, settings)
    for use in foreign_uses(book, analysis.vocabulary, english):
        if _is_decided(use.word, settings):
            continue
        plain = known.sure and not use.by_sense and not _tolerated(use.word, english)
        yield issue_at(
            book,
            use.spans[0],
            check=NAME,
            tier=Tier.ERROR if plain else Tier.QUERY,
            message=use.why or f"{_KIND[other_english(english)]}, {known.where}",
            suggestions=(use.better,),
            confidence=0.85 if plain else 0.6,
            related=use.spans[1:],
        )


def _is_decided(word: str, settings: Settings) -> bool:
    """Whether the style sheet has the word so, or it is told by a check of its own."""
    style = settings.style
    return (
        word in WORDS
        or word in {own.lower() for own in (*style.words, *style.names)}
        or (style.form(MATTER) is not None and ending_of(word) is not None)
    )


def _tolerated(word: str, english: English) -> bool:
    """Seldom used here, but used; or one of two forms that the other English has (dreamt, dreamed)."""
    other = other_english(english)
    return variants().seldom_in(word, english) or any(
        len(reading.forms(other)) > len(reading.forms(english))
        for reading in variants().readings(word)
    )
