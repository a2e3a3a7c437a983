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

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.consistency._odd_words import Row, row_of
from proofkit.habits import title_point
from proofkit.issue import Issue
from proofkit.settings import English, Settings

NAME = "consistency/title-point-two-ways"
NEEDS = frozenset({Need.TEXT})

_WITHOUT, _WITH = title_point.FORMS


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue for the book, on the form that it has less often, or that its English has not."""
    of_its_english = _WITH if analysis.english is English.AMERICAN else _WITHOUT
    row = Row(
        check=NAME,
        better=lambda span, form: _in_form(book.quote(span), form),
        preferred=lambda _: of_its_english,
        shown=lambda form: f"titles {'with' if form == _WITH else 'without'} a point",
        confidence=0.85,
    )
    decided = settings.style.form(title_point.MATTER)
    issue = row_of(book, title_point.usage(book, analysis), row, decided=decided)
    if issue:
        yield issue


def _in_form(title: str, form: str) -> str:
    return title.rstrip(".") + ("." if form == _WITH else "")
