"""Two apostrophes typed for one double quotation mark.

What it finds
    Two single marks side by side where speech opens or closes: *''Hello''*. All of them are one
    issue, since they are one search-and-replace.

Why a reader minds
    They are spaced too widely, and no program can turn them into proper opening and closing marks.

Example
    ''I can't climb,'' said the tortoise.

Better
    "I can't climb," said the tortoise.

When to let it stand
    Where two quotations in single marks end at the same place.
"""

from __future__ import annotations

from collections.abc import Iterable

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.quotations import quotations_of

NAME = "marks/two-apostrophes-for-mark"
NEEDS = frozenset({Need.TEXT})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield one issue for all double marks that are typed as two single ones."""
    quotations = quotations_of(book)
    if not quotations.double:
        return
    places = [
        (mark.span, opens)
        for quotation in quotations.doubles
        for mark, opens in ((quotation.opening, True), (quotation.closing, False))
        if mark is not None and mark.text == "''" and quotation.whole
    ]
    if not places:
        return
    curly = any("“" in page.text for page in book.pages)
    span, opens = places[0]
    yield issue_at(
        book,
        span,
        check=NAME,
        tier=Tier.ERROR,
        message="two apostrophes where a quotation mark belongs",
        suggestions=[("“" if opens else "”") if curly else '"'],
        confidence=0.9,
        related=[other for other, _ in places[1:]],
    )
