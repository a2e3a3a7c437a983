"""A stop inside the marks after one word, outside them after another.

What it finds
    A full stop or comma inside the closing mark of a word or a name that is only part of its sentence,
    where the book mostly has it outside, or the other way about. Speech is another matter: its stop
    always belongs inside. All places are one row.

Why a reader minds
    Few do; but it is the first thing that a copy-editor makes alike.

Example
    He called it "the hole". She called it "home." Nobody called it "ours".

Better
    He called it "the hole". She called it "home". Nobody called it "ours".

When to let it stand
    Where the words in marks are a whole sentence, with a stop of their own.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.checks.consistency._odd_marks import Habit, odd_ones
from proofkit.habits import stop_and_mark
from proofkit.issue import Issue
from proofkit.settings import English, Settings

NAME = "consistency/stop-and-mark-two-ways"
NEEDS = frozenset({Need.TEXT})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """At most one issue. In American English a stop outside is wrong at any rate, and raised elsewhere."""
    if analysis.english is English.AMERICAN and settings.style.form(stop_and_mark.MATTER) is None:
        return
    yield from odd_ones(book, stop_and_mark.usage(book, analysis), settings, _HABIT)


def _reading(book: Book, span: Span, form: str) -> tuple[Span, str]:
    own = book.quote(span)
    stop, mark = (own[-1], own[-2]) if own[-1] in ".," else (own[-2], own[-1])
    return span, own[:-2] + (stop + mark if form == "inside" else mark + stop)


# New Hart's Rules 21.2: by sense in British style, always inside in American.
_HABIT = Habit(
    check=NAME,
    forms=stop_and_mark.FORMS,
    says={"inside": "a stop inside the marks", "outside": "a stop outside the marks"},
    reading=_reading,
    mechanical=False,
    confidence=0.6,
)
