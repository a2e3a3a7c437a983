"""A three year old girl for a three-year-old girl.

What it finds
    An age, a height or a length of time that stands before a noun, or is itself the noun, and lacks
    its hyphens or one of them: a three year old, a two-year old pony. "She was three years old" has
    none, and is left alone. In pairs the first keeps a hanging hyphen: four- and five-year-olds.

Why a reader minds
    "Three year old girls" may be three girls. The Chicago manual (7.89) has "a three-year-old, a
    five-year-old child, seven years old".

Example
    A three year old girl rode a pony.

Better
    A three-year-old girl rode a pony.

When to let it stand
    Hardly ever.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.habits._number_words import CARDINAL
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings

NAME = "consistency/age-without-hyphens"
NEEDS = frozenset({Need.TEXT})

_UNIT = r"(?:year|month|week|day|hour|minute|foot|inch|mile)"
_AGE = re.compile(
    rf"(?<![\w-])(?P<number>\d{{1,3}}|{CARDINAL})(?P<first>[- \u00a0])(?P<unit>{_UNIT})(?P<second>[- \u00a0])"
    r"(?P<last>olds?|tall|long|wide|deep|high)\b(?![-’'])",
    re.IGNORECASE,
)
# "Ten foot tall" is how people talk.
_SPOKEN = re.compile(r"(?:was|is|were|are|am|be|’s|'s|’m|'m|only|nearly|almost|about)[ \u00a0]$")
_HANGING = re.compile(
    rf"(?<![\w-])(?P<number>{CARDINAL})(?= (?:and|or|to) (?:{CARDINAL})-{_UNIT}-old)", re.IGNORECASE
)


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue for each place."""
    for page in book.pages:
        for match in _AGE.finditer(page.prose):
            whole = "{number}-{unit}-{last}".format(**match.groupdict())
            before = page.prose[max(0, match.start() - 12) : match.start()]
            if match[0] == whole or (" " in match["first"] and _SPOKEN.search(before)):
                continue
            yield issue_at(
                book,
                page.span(*match.span()),
                check=NAME,
                tier=Tier.ERROR,
                message="this stands for one word, and has hyphens",
                suggestions=(whole,),
                confidence=0.85,
            )
        for match in _HANGING.finditer(page.prose):
            yield issue_at(
                book,
                page.span(*match.span()),
                check=NAME,
                tier=Tier.QUERY,
                message="the hyphen hangs: it belongs to this number too",
                suggestions=(match[0] + "-",),
                confidence=0.7,
            )
