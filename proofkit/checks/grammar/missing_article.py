"""A set phrase that has lost its "a", "the" or "of".

What it finds
    "Long time ago", "Few days later", "Once upon time", "In middle of the night", "a lot food",
    "able to her". Word lists of our own: only phrases that can't do without the word.

Why a reader minds
    These are the words that stories begin with; a child knows them by heart.

Example
    Long time ago a king lived by the sea.

Better
    A long time ago a king lived by the sea.

When to let it stand
    In the speech of somebody who talks like that.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.quotations import quotations_of

NAME = "grammar/missing-article"
NEEDS = frozenset({Need.TEXT})

_TIMES = "seconds|minutes|moments|hours|days|weeks|months|years|nights|mornings"
_COUNTLESS = (
    "food|water|money|rain|noise|fun|time|work|trouble|help|love|snow|sand|mud|cake|milk|honey|bread"
    "|fruit|meat|fish|grass|wood|gold|people|things|children|friends|animals|birds|trees|flowers"
    "|toys|books|questions|sweets|games"
)
_OWN = "my|your|his|her|their|our"


@dataclass(frozen=True, slots=True, kw_only=True)
class _Phrase:
    """A phrase at fault (group 1), and how it should read: "{}" is the phrase; "" where none can be told."""

    pattern: re.Pattern[str]
    reading: str


def _phrase(pattern: str, reading: str) -> _Phrase:
    return _Phrase(pattern=re.compile(pattern.replace(" ", r"\s+")), reading=reading)


# Where a sentence, a speech or a line begins.
_OPENS = r"(?:^|(?<=[.!?:]\s)|(?<=[\"“‘'\n]))"
_PHRASES = (
    _phrase(_OPENS + r"(Long(?:,? long)? (?:time ago|time back|ago time))\b", "a {}"),
    _phrase(
        _OPENS + rf"(Few (?:{_TIMES}))(?= (?:later|ago|after|before|passed|went by)\b)", "a {}"
    ),
    _phrase(_OPENS + rf"(Couple of (?:{_TIMES}))\b", "a {}"),
    _phrase(rf"\b[Aa]fter (few (?:{_TIMES}))\b", "a {}"),
    _phrase(r"\b([Oo]nce upon time)\b", "once upon a time"),
    _phrase(r"\b[Ii]n (middle of)(?= (?:the|a|his|her|their)\b)", "the {}"),
    _phrase(
        r"\b[Aa]t (end of)(?= (?:the|his|her|their) (?:day|story|road|year|week|race|line)\b)",
        "the {}",
    ),
    _phrase(r"\b[Aa] (lot)(?= (?:" + _COUNTLESS + r")\b)", "{} of"),
    _phrase(r"\b(?:had|has|have|was|were|saw|ate|made) (lot of)\b", "a {}"),
    _phrase(rf"\b(?:am|is|are|was|were|be|been|not) (able to)(?= (?:{_OWN}) \w)", ""),
)


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue for each set phrase that lacks a word; a query where somebody speaks."""
    found = list(_found(book))
    if not found:
        return
    quotations = quotations_of(book)
    alike: dict[tuple[str, Tier], list[tuple[Span, str]]] = defaultdict(list)
    for span, reading in found:
        tier = Tier.QUERY if quotations.speaks(span.page, span.start) else Tier.ERROR
        alike[book.quote(span).lower(), tier].append((span, reading))
    for (_, tier), places in alike.items():
        (first, reading), *others = places
        yield issue_at(
            book,
            first,
            check=NAME,
            tier=tier,
            message=_message(reading),
            confidence=0.85 if tier is Tier.ERROR else 0.55,
            suggestions=[reading] if reading else [],
            related=[span for span, _ in others],
        )


def _found(book: Book) -> Iterator[tuple[Span, str]]:
    for page in book.pages:
        prose = page.prose
        for phrase in _PHRASES:
            for match in phrase.pattern.finditer(prose):
                yield page.span(*match.span(1)), _reading(phrase, match.group(1))


def _reading(phrase: _Phrase, quote: str) -> str:
    reading = phrase.reading.format(quote[0].lower() + quote[1:])
    return reading[:1].upper() + reading[1:] if quote[0].isupper() else reading


def _message(reading: str) -> str:
    return "a small word is missing" if reading else "a verb seems to be missing after this"
