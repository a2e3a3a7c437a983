"""Times of day in two ways: 5.30 and 5:30, seven o'clock and 7 o'clock, 7 pm and 7 p.m.

What it finds
    Four habits of one kind, each for itself: the mark in a time in figures, the hour before
    "o'clock", the letters for morning and afternoon, and whole times in words (half past five) or in
    figures (5.30).

Why a reader minds
    A child who learns to tell the time reads each of them with a finger on the line.

Example
    The shop opened at 9.15 and closed at 5.30. At 5:45 the mice came out.

Better
    The shop opened at 9.15 and closed at 5.30. At 5.45 the mice came out.

When to let it stand
    Where a digital clock or a timetable is shown as it is.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.checks.consistency._odd_words import Row, row_of
from proofkit.habits import clock_times, halves_of_day, oclock, times_of_day
from proofkit.issue import Issue
from proofkit.settings import English, Settings
from proofkit.words.variants import cased_like
from proofkit.words.vocabulary import opens_sentence

NAME = "consistency/time-two-ways"
NEEDS = frozenset({Need.TEXT})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """At most one issue for each habit, on the places in the way that the book has less often."""
    at_home = times_of_day.COLON if analysis.english is English.AMERICAN else times_of_day.POINT
    mark = Row(
        check=NAME,
        better=lambda span, form: times_of_day.in_form(book.quote(span), form),
        preferred=lambda _: at_home,
        shown=lambda form: f"times as {form}",
        confidence=0.8,
    )
    hour = Row(
        check=NAME,
        better=lambda span, form: cased_like(
            oclock.in_form(book.quote(span), form), book.quote(span)
        ),
        preferred=lambda _: oclock.WORDS,
        shown=lambda form: f"the hour {form}",
        confidence=0.8,
    )
    half = Row(
        check=NAME,
        better=lambda span, form: _half(book, span, form),
        preferred=lambda tied: min(tied, key=halves_of_day.FORMS.index),
        confidence=0.8,
    )
    usual = times_of_day.usage(book, analysis).usual or at_home
    point = "." if usual == times_of_day.POINT else ":"
    told = Row(
        check=NAME,
        better=lambda span, form: _told(book, span, form, point),
        preferred=lambda _: clock_times.WORDS,
        shown=lambda form: f"times {form}",
        confidence=0.65,
    )
    for habit, row in (
        (times_of_day, mark),
        (oclock, hour),
        (halves_of_day, half),
        (clock_times, told),
    ):
        usage = habit.usage(book, analysis)
        issue = row_of(book, usage, row, decided=settings.style.form(habit.MATTER))
        if issue:
            yield issue


def _told(book: Book, span: Span, form: str, point: str) -> str:
    """The time at a place in words or in figures, with a capital where it opens a sentence."""
    better = clock_times.in_form(book.quote(span), form, point)
    opens = opens_sentence(book.page(span.page).text, span.start)
    return better[:1].upper() + better[1:] if opens else better


def _half(book: Book, span: Span, form: str) -> str:
    """The place in ``form``, with the full stop that its last point stood for at the end of a sentence."""
    better = halves_of_day.in_form(book.quote(span), form)
    after = book.page(span.page).text[span.end : span.end + 2]
    if not book.quote(span).endswith("."):
        # The sentence's own stop would double the last point.
        return better.removesuffix(".") if after[:1] == "." else better
    ends = not after.strip() or after[:1] in "\n”’\"'" or (after[:1] == " " and after[1:].isupper())
    return better + "." if ends and not better.endswith(".") else better
