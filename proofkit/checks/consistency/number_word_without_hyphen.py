"""Twenty one for twenty-one.

What it finds
    The numbers from twenty-one to ninety-nine, and their ordinals, written without a hyphen.

Why a reader minds
    "Twenty one legged pirates" is a riddle. All handbooks join the two: New Hart's Rules, the Chicago
    manual (7.89, "twenty-one … ninety-nine hyphened").

Example
    The centipede lost twenty one shoes.

Better
    The centipede lost twenty-one shoes.

When to let it stand
    Where two numbers are meant: "twenty, one by one".
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.habits._number_words import TENS, UNITS
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings

NAME = "consistency/number-word-without-hyphen"
NEEDS = frozenset({Need.TEXT})

# "one" may begin a thing of its own: "twenty one-legged pirates", "forty one by one".
_NUMBER = re.compile(
    rf"(?<![\w-])({TENS})(?:[ \u00a0]|(?=(?:{UNITS}|first|third|fourth|fifth|sixth|seventh|eighth|ninth)\b))"
    rf"({UNITS}|first|second|third|fourth|fifth|sixth|seventh|eighth|ninth)"
    r"(?![\w’'‑-]|[ \u00a0](?:by|at a time|after another|or|hundred|thousand|million)\b)",
    re.IGNORECASE,
)
# "At five twenty one of them woke", "nineteen forty five", "ten twenty three": years and times.
_YEAR_OR_TIME = re.compile(
    r"\b(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|"
    r"sixteen|seventeen|eighteen|nineteen|twenty)[ \u00a0]$",
    re.IGNORECASE,
)
_SECONDS = re.compile(r"second", re.IGNORECASE)


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue for each place."""
    for page in book.pages:
        for match in _NUMBER.finditer(page.prose):
            before = page.prose[max(0, match.start() - 12) : match.start()]
            # Thirty second-hand books, a thirty second wait.
            if _YEAR_OR_TIME.search(before) or _SECONDS.fullmatch(match[2]):
                continue
            yield issue_at(
                book,
                page.span(*match.span()),
                check=NAME,
                tier=Tier.ERROR,
                message="numbers from twenty-one to ninety-nine have a hyphen",
                suggestions=(f"{match[1]}-{match[2]}",),
                confidence=0.85,
            )
