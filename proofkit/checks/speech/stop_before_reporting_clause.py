"""A full stop inside the speech, before *said the fox*.

What it finds
    Speech that ends with a full stop although the sentence goes on with a small letter and says who
    spoke.

Why a reader minds
    *said the fox* is left over as half a sentence.

Example
    "I want my tea." said the fox.

Better
    "I want my tea," said the fox.

When to let it stand
    Never in English. Question and exclamation marks stay as they are.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.sentences._questions import asks_what
from proofkit.checks.speech._seams import Seam, first_word_end, last_word_start, seams
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.abbreviations import ends_in_abbreviation
from proofkit.words.reporting import reports

NAME = "speech/stop-before-reporting-clause"
NEEDS = frozenset({Need.TEXT})

_SMALL = re.compile(r"[ \u00a0]+[a-z]")
# A clause that ends right after its verb can be nothing but a reporting clause.
_WHOLE_CLAUSE = re.compile(
    r"[ \u00a0]+(?:(?P<small>He|She|It|They|We|The \w+|A \w+)|[A-Z]\w+) "
    r"(?:said|asked|replied|answered|cried|shouted|whispered|exclaimed|muttered|explained)\s*(?:\.|\Z)"
)


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield each full stop that parts a speech from its reporting clause."""
    for seam in seams(book):
        inner = seam.inner.rstrip()
        if not inner.endswith(".") or inner.endswith("..") or ends_in_abbreviation(inner):
            continue
        whole = _WHOLE_CLAUSE.match(seam.after)
        if whole or (_SMALL.match(seam.after) and reports(seam.after)):
            yield _issue(book, seam, lower=whole is not None and whole["small"] is not None)


def _issue(book: Book, seam: Seam, *, lower: bool) -> Issue:
    page = book.page(seam.closing.span.page)
    mark = seam.closing.span
    start = last_word_start(page, mark.start)
    end = mark.end + first_word_end(seam.after)
    word = page.prose[start : mark.start].rstrip()[:-1]
    stop = "?" if asks_what(re.split(r"[.!?…]\s+", seam.inner.rstrip()[:-1])[-1]) else ","
    after = page.prose[mark.end : end]
    return issue_at(
        book,
        page.span(start, end),
        check=NAME,
        tier=Tier.ERROR,
        message="a full stop before the words that say who spoke",
        suggestions=[f"{word}{stop}{seam.closing.text}{after.lower() if lower else after}"],
        confidence=0.9,
    )
