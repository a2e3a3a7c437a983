"""A sentence that begins with a figure: 3 frogs sat on a log.

What it finds
    A sentence of the story that opens with a number in figures. A book in which three sentences or
    more do is left alone: it counts.

Why a reader minds
    A figure can't have a capital, so the reader doesn't see that a sentence begins. New Hart's Rules
    and the Chicago manual (9.5) have the number in words there, or the sentence turned round (both
    from memory).

Example
    The pond was full. 3 frogs sat on a log.

Better
    The pond was full. Three frogs sat on a log.

When to let it stand
    In a counting book, a list, a score or a countdown.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.habits import numbers
from proofkit.habits._number_words import cardinal
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.vocabulary import opens_sentence

NAME = "consistency/figure-at-start"
NEEDS = frozenset({Need.TEXT})

_HABIT = 3
# Where the book has no number in words beside them, two tell as much.
_HABIT_WITHOUT_WORDS = 2
_FIGURE = re.compile(
    r"(?<![\w£$€#.,:/+–—-])\d{1,3}(?=[ \u00a0][^\W\d_]+[ \u00a0,])"
    r"(?![ \u00a0](?:o[’']clock|[ap]\.?m\b|[A-Z]))"
)
_MID_SENTENCE = re.compile(r"[:;,—–-][ \u00a0]?[\"'“‘]?$")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue for each such sentence."""
    places = list(_places(book))
    in_words = numbers.usage(book, analysis).count(numbers.WORDS)
    if len(places) >= (_HABIT if in_words else _HABIT_WITHOUT_WORDS):
        return
    for span in places:
        yield issue_at(
            book,
            span,
            check=NAME,
            tier=Tier.ERROR,
            message="a sentence begins with a word, not a figure",
            suggestions=(cardinal(int(book.quote(span))).capitalize(),),
            confidence=0.7,
        )


def _places(book: Book) -> Iterator[Span]:
    for page in book.pages:
        for match in _FIGURE.finditer(page.prose):
            before = page.prose[max(0, match.start() - 3) : match.start()]
            opens = opens_sentence(page.prose, match.start())
            if int(match[0]) and opens and not _MID_SENTENCE.search(before):
                yield page.span(*match.span())
