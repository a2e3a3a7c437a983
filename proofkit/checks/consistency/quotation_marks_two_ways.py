"""Speech in double marks here and in single marks there, all through the book.

What it finds
    Speech in the other marks than those that you decided on, or speeches in both kinds where neither is
    rare. A few odd ones in a book with much speech are raised one by one elsewhere (speech/two-kinds-of-mark). All
    places are one row.

Why a reader minds
    A child who learns what the marks mean meets two signs for one thing.

Example
    “Come in,” said the mole. ‘Sit down,’ said the hare. ‘Where?’ said the mole.

Better
    “Come in,” said the mole. “Sit down,” said the hare. “Where?” said the mole.

When to let it stand
    Where one kind is for what is said and the other for what is thought or written.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.checks.consistency._odd_marks import Habit, odd_ones
from proofkit.habits import quotation_marks
from proofkit.habits.usage import Usage
from proofkit.issue import Issue
from proofkit.settings import Settings
from proofkit.words.quotations import quotations_of
from proofkit.words.reporting import reports

NAME = "consistency/quotation-marks-two-ways"
NEEDS = frozenset({Need.TEXT})

# Up to so many, where the book's own marks come so many times as often, are slips and another check's.
_FEW = 3
_MORE = 3
# The other kind of each mark, curly for curly.
_OTHER = {'"': "'", "'": '"', "“": "‘", "”": "’", "‘": "“", "’": "”"}


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """At most one issue, where the odd ones are no mere slips."""
    usage = quotation_marks.usage(book, analysis)
    spoken = _spoken(book, usage)
    for issue in odd_ones(book, spoken, settings, _HABIT):
        odd = 1 + len(issue.related)
        slips = odd <= _FEW and len(quotations_of(book).speech) >= _MORE * odd
        if not slips or _is_decided_against(usage, settings):
            yield issue


def _spoken(book: Book, usage: Usage) -> Usage:
    """The speeches alone, less those that lie in one another."""
    every = sorted(span for spans in usage.places.values() for span in spans)
    nested = {
        span
        for one, other in pairwise(every)
        if one.page == other.page and other.start < one.end
        for span in (one, other)
    }
    return Usage(
        matter=usage.matter,
        places={
            form: places
            for form, spans in usage.places.items()
            if (places := tuple(s for s in spans if s not in nested and _is_speech(book, s)))
        },
    )


def _is_decided_against(usage: Usage, settings: Settings) -> bool:
    """Whether the author decided for marks that the book mostly hasn't."""
    decided = settings.style.form(usage.matter)
    return decided in quotation_marks.FORMS and decided != usage.usual


def _is_speech(book: Book, span: Span) -> bool:
    """Whether the words have a stop of their own before the closing mark, or somebody says them."""
    prose = book.page(span.page).prose
    return prose[span.end - 2] in ",.!?…—–" or reports(prose[span.end : span.end + 60])


def _reading(book: Book, span: Span, form: str) -> tuple[Span, str]:
    own = book.quote(span)
    return span, _OTHER.get(own[0], own[0]) + own[1:-1] + _OTHER.get(own[-1], own[-1])


# New Hart's Rules 4.14: single first in British books, double in American; many British publishers of
# children's books set double. One of them throughout.
_HABIT = Habit(
    check=NAME,
    forms=quotation_marks.FORMS,
    says={"double": "double marks", "single": "single marks"},
    reading=_reading,
    mechanical=False,
    confidence=0.7,
)
