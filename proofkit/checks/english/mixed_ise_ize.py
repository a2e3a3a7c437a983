"""Verbs in -ise and verbs in -ize, mixed.

What it finds
    In a British book, realise beside organize, or either against your style sheet. Both endings are
    good British English, but a book keeps to one. Words that have only one spelling (surprise,
    exercise, advertise, prize) don't count.

Why a reader minds
    Few children will see it. The publisher's copy-editor will, and has to ask which one you mean.

Example
    She realised that it was late. He apologized.

Better
    She realised that it was late. He apologised.

When to let it stand
    When one of them is in a quotation or a name. Otherwise choose one ending and keep to it.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.counting import times
from proofkit.habits.endings import FORMS, ISE, MATTER, usage
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import English, Settings
from proofkit.words.variants import variants

NAME = "english/mixed-ise-ize"
NEEDS = frozenset({Need.TEXT})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue for the book, on the ending that it has less often; -ize if they are equal."""
    decided = settings.style.form(MATTER)
    if decided not in FORMS and analysis.english is not English.BRITISH:
        return
    own = usage(book, analysis)
    form = decided if decided in FORMS else own.usual or ISE
    odd = own.against(form)
    if not odd or (decided not in FORMS and not own.count(form)):
        return
    even = own.count(form) == len(odd)
    yield issue_at(
        book,
        odd[0],
        check=NAME,
        tier=Tier.ERROR if decided else Tier.QUERY,
        message=f"your style sheet has {form}"
        if decided
        else f"elsewhere the book has {form} ({times(own.count(form))})",
        suggestions=(variants().ise_ize(book.quote(odd[0])) or "",),
        confidence=0.9 if decided else 0.6 if even else 0.8,
        related=odd[1:],
    )
