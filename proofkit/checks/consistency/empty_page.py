"""A page without words that doesn't say so, in a manuscript where others do.

What it finds
    A page with a label and nothing under it, where other pages without words carry a note ("no text").
    All of them are one row.

Why a reader minds
    The designer can't tell a page that is meant to have no words from one whose words were lost.

Example
    Page 4: [no words, a picture of the sea]. Page 5:

Better
    Page 4: [no words, a picture of the sea]. Page 5: [no words]

When to let it stand
    Where the page is meant to be blank and the designer knows.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Page, Role
from proofkit.checks.check import Need
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings

NAME = "consistency/empty-page"
NEEDS = frozenset({Need.TEXT})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """At most one issue, on the first page that is empty without a word about it."""
    wordless = [page for page in book.pages if page.label and _is_wordless(page)]
    silent = [page for page in wordless if not page.text.strip()]
    noted = len(wordless) - len(silent)
    if not silent or not noted:
        return
    first, *others = silent
    times = "one other page" if noted == 1 else f"{noted} other pages"
    yield issue_at(
        book,
        first.span(0, 0),
        check=NAME,
        tier=Tier.QUERY,
        message=f"nothing on this page; {times} without words say so in a note",
        confidence=0.7,
        related=[page.span(0, 0) for page in others],
    )


def _is_wordless(page: Page) -> bool:
    return page.role in (Role.STORY, Role.NOTE) and not page.words
