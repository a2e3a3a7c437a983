"""Numbers in words and in figures: three mice, 3 mice.

What it finds
    A book that counts things in words in one place and in figures in another. Ages, dates, times,
    pages, prices and measures don't count. Words for small numbers beside figures for greater ones
    (three boys, 24 girls) are a style of their own, and left alone.

Why a reader minds
    Stories have their small numbers in words, and counting books in figures; a book in between looks
    unfinished.

Example
    Two hens sat on five eggs. Then 3 eggs cracked.

Better
    Two hens sat on five eggs. Then three eggs cracked.

When to let it stand
    On a sign, in a list, or where the figure itself is the point. New Hart's Rules and the Chicago
    manual have numbers up to a hundred in words in running text (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.checks.consistency._odd_words import Row, row_of
from proofkit.habits import numbers
from proofkit.habits.usage import Usage
from proofkit.issue import Issue
from proofkit.settings import Settings
from proofkit.words.variants import cased_like
from proofkit.words.vocabulary import opens_sentence

NAME = "consistency/number-two-ways"
NEEDS = frozenset({Need.TEXT})

# Many write numbers up to ten in words and greater ones in figures.
_SMALL = 10
# With so many words, a single figure is odd all the same.
_HABIT = 3


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue, on the numbers in the way that the book has less often; figures if they are equal."""

    def better(span: Span, form: str) -> str:
        number = numbers.in_form(numbers.number_at(book, span), form)
        opens = opens_sentence(book.page(span.page).text, span.start)
        return number[:1].upper() + number[1:] if opens else cased_like(number, number)

    row = Row(
        check=NAME,
        better=better,
        preferred=lambda _: numbers.WORDS,
        shown=lambda form: f"numbers {form}",
        confidence=0.7,
    )
    decided = settings.style.form(numbers.MATTER)
    usage = numbers.usage(book, analysis)
    issue = row_of(book, usage if decided else _like(book, usage), row, decided=decided)
    if issue:
        yield issue


def _like(book: Book, usage: Usage) -> Usage:
    """The usage less the figures that a style with words for small numbers asks for."""
    words = [numbers.number_at(book, span) for span in usage.places.get(numbers.WORDS, ())]
    figures = usage.places.get(numbers.FIGURES, ())
    values = [numbers.number_at(book, span) for span in figures]
    small = min(values, default=0) > max(_SMALL, *words, 0)
    if small and (len(values) > 1 or len(words) < _HABIT):
        return replace(usage, places={numbers.WORDS: usage.places.get(numbers.WORDS, ())})
    return usage
