"""Thoughts, sounds or a title in italics here, in marks or plain there.

What it finds
    A thought (told as one by *thought* or *wondered*), a sound that stands alone, or the title of a
    book, a song or a ship that is not dressed as it is elsewhere in the book: in italics, in quotation
    marks, or plain. One row for thoughts, one for sounds, one for titles. Italics are read from Word,
    OpenDocument, Rich Text and Markdown files; a plain text has none.

Why a reader minds
    The dress tells whether words are said, thought or heard. When it changes, a voice changes by
    mistake.

Example
    “Why me?” thought Pip. “Why now?” thought Pip. Why here? thought Pip.

Better
    “Why me?” thought Pip. “Why now?” thought Pip. “Why here?” thought Pip.

When to let it stand
    Where the change is meant, as when a ship's name is also a person's.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.checks.consistency._odd_marks import Norm, norm_of
from proofkit.habits import sound_typeface, thoughts, title_typeface
from proofkit.habits.usage import Usage
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings

NAME = "consistency/typeface-two-ways"
NEEDS = frozenset({Need.TEXT})

_SAYS = {"italics": "in italics", "marks": "in marks", "plain": "in plain type"}
_ONE = {"thoughts": "a thought", "sounds": "a sound", "titles": "a title"}
_MOSTLY = 2  # times as often


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """At most one issue each for thoughts, sounds and titles."""
    for usage in (thoughts.usage(book, analysis), sound_typeface.usage(book, analysis)):
        yield from _rows(book, [usage], usage.matter, settings, confidence=0.6)
    own = title_typeface.titles(book, analysis)
    yield from _rows(book, own, title_typeface.MATTER, settings, confidence=0.55)


def _rows(
    book: Book,
    usages: list[Usage] | tuple[Usage, ...],
    what: str,
    settings: Settings,
    *,
    confidence: float,
) -> Iterator[Issue]:
    """One issue for all places in another dress than most of their kind."""
    odd: list[tuple[Span, str, Norm]] = []
    for usage in usages:
        norm = norm_of(Usage(matter=what, places=usage.places), settings, forms=thoughts.FORMS)
        others = usage.against(norm.form) if norm else ()
        if norm and others and (norm.decided or norm.times >= _MOSTLY * len(others)):
            odd += [(span, _dress(usage, span), norm) for span in others]
    if not odd:
        return
    odd.sort(key=lambda place: place[0])
    first, dress, norm = odd[0]
    usual = "your style sheet has them" if norm.decided else "elsewhere"
    times = "" if norm.decided else f" ({norm.elsewhere})"
    yield issue_at(
        book,
        first,
        check=NAME,
        tier=Tier.QUERY,
        message=f"{_ONE[what]} {_SAYS[dress]}; {usual} {_SAYS[norm.form]}{times}",
        confidence=confidence,
        related=[span for span, _, _ in odd[1:]],
    )


def _dress(usage: Usage, place: Span) -> str:
    return next(form for form, spans in usage.places.items() if place in spans)
