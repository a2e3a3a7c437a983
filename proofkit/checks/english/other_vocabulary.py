"""Words of the other English.

What it finds
    In a British book a word that only Americans say (sidewalk, diaper, flashlight, gotten), and in an American
    book one that only the British say (dustbin, lorry, pocket money). It asks
    only where the English of the book is plain or was chosen, and never about words that both countries have in
    some sense: jumper, biscuit, boot, chips, pants. Mum beside Mam is asked about as well.

Why a reader minds
    A British child doesn't know what a diaper is, and the picture beside it may not say.

Example
    Grandad took the baby's diaper off. What colour it was!

Better
    Grandad took the baby's nappy off. What colour it was!

When to let it stand
    When somebody from the other country speaks, when the story is set there, or when your readers have
    the word too, as in other countries that speak English.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.counting import times
from proofkit.checks.english._certainty import certainty
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import English, Settings
from proofkit.words.country_words import words_of_country
from proofkit.words.variants import cased_like, other_english

NAME = "english/other-vocabulary"
NEEDS = frozenset({Need.TEXT})

_KIND = {
    English.BRITISH: "a British word",
    English.AMERICAN: "an American word",
}
_MOTHERS = ("mum", "mam")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue a word, with its other places as related."""
    yield from _two_mothers(book, analysis)
    known = certainty(book, analysis, settings)
    if not known.sure:
        return
    other = other_english(analysis.english)
    decided = {word.lower() for word in (*settings.style.words, *settings.style.names)}
    why = f"{_KIND[other]}, {known.where}"
    for word, spans in words_of_country(book, analysis.vocabulary, other):
        if word.word not in decided:
            quote = book.quote(spans[0])
            yield issue_at(
                book,
                spans[0],
                check=NAME,
                tier=Tier.QUERY,
                message=why,
                suggestions=tuple(_cased(better, quote) for better in word.others),
                confidence=0.55,
                related=spans[1:],
            )


def _two_mothers(book: Book, analysis: Analysis) -> Iterator[Issue]:
    """Mum and Mam in one book: one of them may be a slip of the hand, or another family's mother."""
    uses = [use for word in _MOTHERS if (use := analysis.vocabulary.use(word))]
    if len(uses) == len(_MOTHERS):
        rarer, usual = sorted(uses, key=lambda use: use.count)
        yield issue_at(
            book,
            rarer.spans[0],
            check=NAME,
            tier=Tier.QUERY,
            message=f"elsewhere the book has {usual.usual_form} ({times(usual.count)})",
            suggestions=(cased_like(usual.word, book.quote(rarer.spans[0])),),
            confidence=0.45,
            related=rarer.spans[1:],
        )


def _cased(better: str, quote: str) -> str:
    """As the quote has its capitals; a name for a set (TV) keeps its own."""
    return better if better.isupper() else cased_like(better, quote)
