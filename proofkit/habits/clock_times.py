"""Whether the book tells its times in words or in figures: half past five, 5.30.

Times with "a.m." or "p.m." have figures in every style, and "o'clock" is a matter of its own. The Chicago
manual (9.37) spells out the even, half and quarter hours in running text (from memory).
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.habits import halves_of_day, times_of_day
from proofkit.habits._number_words import cardinal, value
from proofkit.habits._places import usage_of
from proofkit.habits.usage import Usage

MATTER = "times"
WORDS, FIGURES = FORMS = ("in words", "in figures")

_HOUR = "|".join(cardinal(hour) for hour in range(12, 0, -1))
_TOLD = re.compile(
    r"\b(?P<minutes>half|(?:a )?quarter|five|ten|twenty[- ]five|twenty)[ \u00a0](?P<side>past|to)[ \u00a0]"
    rf"(?P<hour>{_HOUR})(?![\w-])",
    re.IGNORECASE,
)
_FIGURE = re.compile(r"(\d{1,2})([.:])(\d\d)")
_BEFORE = re.compile(r"\b(?:from|between)[ \u00a0]$", re.IGNORECASE)
# A preposition or a small word may follow a time; a thing follows a number.
_THINGS = re.compile(
    r"[ \u00a0](?!(?:when|and|in|on|at|by|but|the|before|after|o|or|as|so|sharp|already|exactly|precisely|he|she|it|they|we|i)\b)[a-z]"
)
_LATEST = 12


def usage(book: Book, analysis: Analysis) -> Usage:
    """Where the book has a time of five minutes or more in words, and where in figures.

    Times in figures that nobody says in words (16:23), or with the half of the day, are left out.
    """
    return usage_of(MATTER, _places(book, analysis))


def in_form(written: str, form: str, mark: str = ".") -> str:
    """The time in words or in figures, there with ``mark`` between hour and minutes."""
    return _figures(written, mark) if form == FIGURES else _words(written)


def _words(written: str) -> str:
    match = _FIGURE.fullmatch(written)
    if not match:
        return written
    hour, minutes = int(match[1]), int(match[3])
    if not minutes:
        return f"{cardinal(hour)} o’clock"
    side, told = ("past", minutes) if minutes <= 30 else ("to", 60 - minutes)
    hour = hour if side == "past" else hour % 12 + 1
    named = {30: "half", 15: "quarter"}.get(told) or cardinal(told)
    return f"{named} {side} {cardinal(hour)}"


def _figures(written: str, mark: str) -> str:
    match = _TOLD.fullmatch(written)
    if not match:
        return written
    said = match["minutes"].lower().removeprefix("a ")
    minutes = {"half": 30, "quarter": 15}.get(said) or value(said) or 0
    hour = value(match["hour"]) or 0
    if match["side"].lower() == "to":
        hour, minutes = (hour - 2) % 12 + 1, 60 - minutes
    return f"{hour}{mark}{minutes:02}"


def _places(book: Book, analysis: Analysis) -> Iterator[tuple[str, Span]]:
    for page in book.pages:
        for match in _TOLD.finditer(page.prose):
            # "From five to ten", "five to ten mice": no time, but how many.
            counted = match["minutes"].lower() in ("five", "ten", "twenty") and _THINGS.match(
                page.prose, match.end()
            )
            if not counted and not _BEFORE.search(
                page.prose[max(0, match.start() - 9) : match.start()]
            ):
                yield WORDS, page.span(*match.span())
    halves = halves_of_day.usage(book, analysis).places.values()
    taken = {span.start for spans in halves for span in spans}
    for spans in times_of_day.usage(book, analysis).places.values():
        for span in spans:
            figure = _FIGURE.fullmatch(book.quote(span))
            if figure and span.start not in taken and _can_be_told(figure):
                yield FIGURES, span


def _can_be_told(figure: re.Match[str]) -> bool:
    return 1 <= int(figure[1]) <= _LATEST and int(figure[3]) % 5 == 0
