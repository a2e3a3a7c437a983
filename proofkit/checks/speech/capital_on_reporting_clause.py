"""A capital on *he said* after a speech.

What it finds
    A pronoun or article with a capital although the sentence of the speech goes on: after a comma,
    and after a question or exclamation mark where nothing but *he said* follows.

Why a reader minds
    A capital starts a new sentence; *He said.* is none.

Example
    "I am going home," He said.

Better
    "I am going home," he said.

When to let it stand
    Where *He said* starts a sentence of its own (*"No!" He said it twice.*).
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.speech._seams import seams
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.reporting import reports

NAME = "speech/capital-on-reporting-clause"
NEEDS = frozenset({Need.TEXT})

_CAPITAL = re.compile(
    r"[ \u00a0]+(?P<word>He|She|It|They|We|(?:The|A|An)(?= [a-z])|His|Her|Their|My|Our|Said|Asked|Cried|Replied)\b"
)
_WHOLE = re.compile(
    r"[ \u00a0]+(?:He|She|It|They|We|The [a-z]\w+|A [a-z]\w+) "
    r"(?:said|asked|replied|answered|cried|shouted|whispered|exclaimed|muttered|wondered|yelled)\s*\."
)


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield each capital that breaks a speech off from its reporting clause."""
    for seam in seams(book):
        ends = seam.inner.rstrip()[-1:]
        word = _CAPITAL.match(seam.after)
        if word is None:
            continue
        after_comma = ends == "," and reports(" " + word["word"].lower() + seam.after[word.end() :])
        if not after_comma and not (ends in ("!", "?") and _WHOLE.match(seam.after)):
            continue
        page, at = book.page(seam.closing.span.page), seam.closing.span.end
        yield issue_at(
            book,
            page.span(at + word.start("word"), at + word.end("word")),
            check=NAME,
            tier=Tier.ERROR,
            message="a capital although the sentence goes on",
            suggestions=[word["word"].lower()],
            confidence=0.85 if after_comma else 0.65,
        )
