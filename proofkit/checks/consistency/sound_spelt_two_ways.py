"""One sound in two spellings: Whoosh and Woosh, tick-tock and tick tock.

What it finds
    A sound that the book spells one way at least twice, and once another way: Whoosh twice and Woosh,
    Zzz twice and Zzzz. A sound that grows in one line, or from page to page, is left alone.

Why a reader minds
    Whoever reads aloud makes the sound that stands there. A child asks why it is another one today.

Example
    Whoosh! went the kite. Whoosh! went the hat. Woosh! went the cat.

Better
    Whoosh! went the kite. Whoosh! went the hat. Whoosh! went the cat.

When to let it stand
    When it is meant to be longer, louder or another sound.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.checks.consistency._odd_words import Row, row_of
from proofkit.habits._compound_keys import key_of
from proofkit.habits._sound_words import sound_key
from proofkit.habits.compounds import joined_as
from proofkit.habits.sounds import grows, sound_usages
from proofkit.habits.usage import Usage
from proofkit.issue import Issue
from proofkit.settings import Settings
from proofkit.words.variants import cased_like

NAME = "consistency/sound-spelt-two-ways"
NEEDS = frozenset({Need.TEXT})

_LEAST = 2  # times as often as all others together, and as many at least


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue for each sound, on the places that are not spelt as the others."""

    def better(span: Span, form: str) -> str:
        quote = book.quote(span)
        return joined_as(quote, form) if key_of(quote) == key_of(form) else cased_like(form, quote)

    row = Row(check=NAME, better=better, confidence=0.6)
    for usage in sound_usages(book, analysis):
        decided = _decided(usage, settings.style.words)
        form = decided or usage.usual
        odd = _not_on_purpose(book, usage, form) if form else usage
        issue = row_of(book, odd, row, decided=decided)
        if issue and (decided or _is_plain(odd)):
            yield issue


def _decided(usage: Usage, words: tuple[str, ...]) -> str | None:
    """The author's spelling of a sound that the book has."""
    keys = {sound_key(form) for form in usage.places}
    return next((word.lower() for word in words if sound_key(word) in keys), None)


def _is_plain(usage: Usage) -> bool:
    """Whether the usual spelling stands for more than chance, and the sound doesn't swell."""
    usual = usage.usual
    if not usual or _swells(usage):
        return False
    return usage.count(usual) >= max(_LEAST, _LEAST * len(usage.against(usual)))


def _not_on_purpose(book: Book, usage: Usage, form: str) -> Usage:
    """The usage less the places where a sound is drawn out on purpose."""
    kept = {
        own: tuple(s for s in spans if own == form or not _on_purpose(book, s, own, form, usage))
        for own, spans in usage.places.items()
    }
    return replace(usage, places={own: spans for own, spans in kept.items() if spans})


def _swells(usage: Usage) -> bool:
    """Whether the sound grows (or dies away) through the book: three lengths or more, in order."""
    by_place = sorted((span, len(form)) for form, spans in usage.places.items() for span in spans)
    lengths = [length for _, length in by_place]
    return len(set(lengths)) > 2 and lengths in (sorted(lengths), sorted(lengths, reverse=True))


def _on_purpose(book: Book, span: Span, form: str, usual: str, usage: Usage) -> bool:
    """Whether the place stands in one line with another length of its sound, or is shouted."""
    if not grows(form, usual):
        return False
    if book.quote(span).isupper() and not any(
        book.quote(other).isupper() for other in usage.places.get(usual, ())
    ):
        return True
    line = _line(book, span)
    return any(
        other != span and _line(book, other) == line
        for others in usage.places.values()
        for other in others
        if other not in usage.places[form]
    )


def _line(book: Book, span: Span) -> tuple[int, int]:
    """Which line of which page the place is on."""
    return span.page, book.page(span.page).text.count("\n", 0, span.start)
