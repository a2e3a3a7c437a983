"""Single marks where the rest of the book has double ones, or the other way about.

What it finds
    A few quotations in the other kind of mark than the book's, not inside another quotation. All of
    them are one query. Marks that belong to speech inside speech are right and left alone.

Why a reader minds
    A child who learns what the marks mean meets two signs for one thing.

Example
    "Come in," said the mole. 'Sit down,' said the mole's wife.

Better
    "Come in," said the mole. "Sit down," said the mole's wife.

When to let it stand
    Where single marks set off a word or a title on purpose, all through the book.
"""

from __future__ import annotations

from collections.abc import Iterable

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.quotations import Quotation, Quotations, quotations_of

NAME = "speech/two-kinds-of-mark"
NEEDS = frozenset({Need.TEXT})

_PLAIN = 0.3  # the cost of marks that may as well be apostrophes is higher
_LONG = 120  # characters: two apostrophes far apart look like a long quotation
_MORE = 3  # times as many in the book's own marks
_FEW = 3  # more than this is a practice, not a slip


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield one issue for the few quotations whose marks differ from the book's."""
    quotations = quotations_of(book)
    odd = [q for q in quotations.other if _on_its_own(q, quotations)]
    if not 0 < len(odd) <= _FEW or len(quotations.speech) < _MORE * len(odd):
        return
    spans = [span for q in odd if (span := q.span) is not None]
    first = odd[0]
    opener, closer = _marks(quotations)
    inner = book.quote(first.parts[0]) if len(first.parts) == 1 else None
    yield issue_at(
        book,
        spans[0],
        check=NAME,
        tier=Tier.QUERY,
        message=f"elsewhere the book has {'double' if quotations.double else 'single'} marks",
        suggestions=[opener + inner + closer] if inner else [],
        confidence=0.55,
        related=spans[1:],
    )


def _on_its_own(quotation: Quotation, quotations: Quotations) -> bool:
    span = quotation.span
    if span is None or len(quotation.parts) != 1 or not (quotation.opening and quotation.closing):
        return False
    if (
        quotation.opening.opening + quotation.closing.closing > _PLAIN
        or span.end - span.start > _LONG
    ):
        return False
    return not quotations.speaks(span.page, span.start)


def _marks(quotations: Quotations) -> tuple[str, str]:
    """The marks that most of the book's speech has."""
    whole = [(q.opening.text, q.closing.text) for q in quotations.speech if q.opening and q.closing]
    return max(whole, key=whole.count)
