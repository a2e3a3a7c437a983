"""Mr and Mr., mixed.

What it finds
    The same title (Mr, Mrs, Ms, Dr) with a point in one place and without it in another.

Why a reader minds
    British books print Mr, American ones Mr.; a book that has both looks unfinished.

Example
    Mr Tock met Mrs Pell. "Good day, Mr. Tock," said Mrs Pell.

Better
    Mr Tock met Mrs Pell. "Good day, Mr Tock," said Mrs Pell.

When to let it stand
    On a sign or in a letter that is shown as the character wrote it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import English, Settings

NAME = "consistency/title-point-two-ways"
NEEDS = frozenset({Need.TEXT})

_TITLE = re.compile(r"(?<![\w'’-])(?:Mr|Mrs|Ms|Dr)\b(\.?)(?=\s+\w)")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue for the book, on the form that it has less often."""
    forms: dict[bool, list[Span]] = {True: [], False: []}
    for page in book.pages:
        for match in _TITLE.finditer(page.prose):
            forms[bool(match[1])].append(page.span(*match.span()))
    if not (forms[True] and forms[False]):
        return
    usual = _usual(forms, analysis.english)
    first, *others = forms[not usual]
    title = book.quote(first).rstrip(".")
    better = f"{title}." if usual else title
    count = len(forms[usual])
    yield issue_at(
        book,
        first,
        check=NAME,
        tier=Tier.ERROR if count >= 3 * len(forms[not usual]) else Tier.QUERY,
        message=f"elsewhere titles stand {'with' if usual else 'without'} a point ({count} {'time' if count == 1 else 'times'})",
        suggestions=(better,),
        confidence=0.85,
        related=others,
    )


def _usual(forms: dict[bool, list[Span]], english: English) -> bool:
    """Whether a point is usual here: by the book's majority, else as its English has it."""
    if len(forms[True]) == len(forms[False]):
        return english is English.AMERICAN
    return len(forms[True]) > len(forms[False])
