"""The King in one place, the king in another.

What it finds
    A common noun after "the" that has a capital in a few places inside sentences and none in most,
    or a capital in nearly all and none in one.

Why a reader minds
    A capital makes it a title or a name. It can't be both at once.

Example
    The king slept. Nobody woke the king. Only the King's cat knew why, and the king never asked.

Better
    The king slept. Nobody woke the king. Only the king's cat knew why, and the king never asked.

When to let it stand
    When the capital marks one particular person among others: the King among kings.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.checks.consistency._roles import role_uses
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings

NAME = "consistency/capital-after-article"
NEEDS = frozenset({Need.LANGUAGE_MODEL})

# A capital that is the exception is a slip sooner than one that is the rule and once left out.
_TIMES_LOWER = 2
_TIMES_CAPITAL = 3


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue for each word, on the form that the book has at most half as often as the other."""
    for word, uses in role_uses(book, analysis).items():
        if len(uses.bare_capital) > 1:
            continue  # it is a name; another check asks about the article
        capital, lower = uses.the_capital, uses.the_lower
        fewer, more = (capital, lower) if len(capital) < len(lower) else (lower, capital)
        times = _TIMES_LOWER if fewer is capital else _TIMES_CAPITAL
        if not fewer or len(more) < times * len(fewer):
            continue
        better = word if fewer is capital else word.capitalize()
        first, *others = [_noun(book, span) for span in fewer]
        yield issue_at(
            book,
            first,
            check=NAME,
            tier=Tier.ERROR if fewer is capital else Tier.QUERY,
            message=f"elsewhere the {better} ({len(more)} times)",
            suggestions=(better,),
            confidence=0.7 if fewer is capital else 0.45,
            related=others,
        )


def _noun(book: Book, span: Span) -> Span:
    """The noun without its article."""
    length = len(book.quote(span).split()[-1])
    return Span(page=span.page, start=span.end - length, end=span.end)
