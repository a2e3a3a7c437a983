"""One word in two accepted spellings: while, whilst; towards, toward.

What it finds
    A word that one English spells in two ways, both of them in the book: knelt and kneeled,
    towards and toward, any more and anymore, Grandad and Granddad, miaow and meow. "A lighted
    window", "a backward glance" and "any more cake" are other words and don't count.

Why a reader minds
    Either is good English. Both in one book look as if two people had written it.

Example
    She ran towards the sea. He ran towards the sea. The crab walked toward them.

Better
    She ran towards the sea. He ran towards the sea. The crab walked towards them.

When to let it stand
    In a quotation, or where one character speaks in a way of their own. To keep one spelling in all
    drafts, write it among the words of your style sheet.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.consistency._odd_words import Row, row_of
from proofkit.habits.spellings import decided_spelling, spelling_usages
from proofkit.issue import Issue
from proofkit.settings import English, Settings
from proofkit.words.two_spellings import family_by_word

NAME = "consistency/word-spelt-two-ways"
NEEDS = frozenset({Need.LANGUAGE_MODEL})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue for each word, on the places in the spelling that the book has less often."""
    for usage in spelling_usages(book, analysis):
        family = family_by_word()[usage.matter]
        order = family.forms
        # British dictionaries put knelt and towards first, American ones kneeled and toward.
        if analysis.english is English.AMERICAN and family.kind:
            order = tuple(reversed(order))

        def usual(tied: Sequence[str], order: tuple[str, ...] = order) -> str:
            return min(tied, key=order.index)

        row = Row(
            check=NAME,
            better=lambda span, form, family=family: family.respelt(book.quote(span), form),  # type: ignore[misc] # a default argument keeps this turn's family
            preferred=usual,
            confidence=0.8,
        )
        decided = decided_spelling(usage.matter, settings.style.words)
        issue = row_of(book, usage, row, decided=decided)
        if issue:
            yield issue
