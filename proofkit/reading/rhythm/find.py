"""Everything in a book's prose that a reader's voice may stumble over, one place a spread at most.

These are remarks for an author who reads the page aloud, and no issues: what one ear takes for a stumble
another takes for style, and no rule can tell.
"""

from __future__ import annotations

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.habits.sounds import sound_usages
from proofkit.reading.rhythm.beginnings import alike_beginnings
from proofkit.reading.rhythm.echoes import echoes
from proofkit.reading.rhythm.place import RhythmPlace, Stumble
from proofkit.reading.rhythm.twisters import twisters
from proofkit.words.quotations import quotations_of

# Which to name where a spread has several: what surely trips a tongue before what may be style.
_FIRST = (Stumble.TWISTER, Stumble.ECHO, Stumble.BEGINNINGS)


def rhythm_of(book: Book, analysis: Analysis) -> tuple[RhythmPlace, ...]:
    """The places, in the book's order; of a spread (or a page on none) the likeliest one."""
    speech = quotations_of(book)
    sounds = sound_usages(book, analysis)
    noises = {span for usage in sounds for spans in usage.places.values() for span in spans}
    found = (
        *twisters(book, analysis.english, speech, noises),
        *echoes(book, analysis, speech),
        *alike_beginnings(book, speech),
    )
    chosen: dict[tuple[bool, int], RhythmPlace] = {}
    for place in sorted(found, key=lambda place: (_FIRST.index(place.kind), place.span)):
        spread = book.page(place.span.page).spread
        chosen.setdefault((spread is None, spread or place.span.page), place)
    return tuple(sorted(chosen.values(), key=lambda place: place.span))
