"""Spring in one place, spring in another.

What it finds
    A season, the sun, the moon or the earth with a capital in one place of the story and without it in
    another, sentence beginnings left out.

Why a reader minds
    With a capital the Moon is somebody; without it, a lamp in the sky. It can't be both at once.

Example
    In spring the bear woke. In spring the bear ate. In Spring the bear sang.

Better
    In spring the bear woke. In spring the bear ate. In spring the bear sang.

When to let it stand
    When one of them is a character, or part of a name that the story has not finished.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.checks.consistency._odd_words import Row, row_of
from proofkit.habits import seasons
from proofkit.issue import Issue
from proofkit.settings import Settings

NAME = "consistency/season-capital"
NEEDS = frozenset({Need.TEXT})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue for the seasons, and one each for sun, moon and earth; of two as frequent, on the capital."""
    row = Row(
        check=NAME,
        better=lambda span, form: _in_form(book, span, form),
        preferred=lambda _: seasons.LOWER,
        shown=lambda form: f"it with {form}" if form == seasons.CAPITAL else f"it in {form}",
        confidence=0.75,
    )
    decided = {word.lower(): word for word in (*settings.style.words, *settings.style.names)}
    for usage in seasons.usages(book):
        words = {book.quote(span).lower() for spans in usage.places.values() for span in spans}
        ruled = next((decided[word] for word in sorted(words) if word in decided), None)
        form = None
        if ruled:
            form = seasons.CAPITAL if ruled[0].isupper() else seasons.LOWER
        issue = row_of(book, usage, row, decided=form)
        if issue:
            yield issue


def _in_form(book: Book, span: Span, form: str) -> str:
    word = book.quote(span)
    return word.capitalize() if form == seasons.CAPITAL else word.lower()
