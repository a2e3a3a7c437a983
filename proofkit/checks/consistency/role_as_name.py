"""A character's name that is also a common noun, once without its capital.

What it finds
    "crow flew off" in a book where the bird is called Crow: no article before it, so it does a
    name's work, but in lower case.

Why a reader minds
    One moment Crow is a person, the next a word.

Example
    Fox met Crow. "Give me the cheese," Fox told Crow. But crow was clever.

Better
    Fox met Crow. "Give me the cheese," Fox told Crow. But Crow was clever.

When to let it stand
    When the thing is meant and not the character.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.consistency._roles import role_uses
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings

NAME = "consistency/role-as-name"
NEEDS = frozenset({Need.LANGUAGE_MODEL})

_TIMES_A_NAME = 3


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue for each place: the book has the word as a name at least three times as often."""
    for uses in role_uses(book, analysis).values():
        if not uses.bare_capital or uses.as_name < _TIMES_A_NAME * max(1, len(uses.bare_lower)):
            continue
        for span in uses.bare_lower:
            name = book.quote(span).capitalize()
            yield issue_at(
                book,
                span,
                check=NAME,
                tier=Tier.ERROR,
                message=f"elsewhere {name} is a name ({uses.as_name} times)",
                suggestions=(name,),
                confidence=0.75,
            )
