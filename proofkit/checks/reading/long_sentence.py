"""A sentence far longer than any in books for its age.

What it finds
    A sentence at least a quarter longer than the longest that books of its age band have: in a picture
    book, one of 50 words or more. All such sentences of a book are one issue, at the longest.

Why a reader minds
    Whoever reads aloud runs out of breath, and whoever listens has lost the beginning by the end.
    Often a full stop is merely missing.

Example
    The goose flew over the mill and she looked for the key and … and she never once looked down. (62 words)

Better
    The goose flew over the mill. She looked for the key. … She never once looked down.

When to let it stand
    The breathless sentence is an old joke and a good one, and a heap of and's is a child's own way of
    telling. A sentence that grows by repeating itself, as in a cumulative tale, and one set in lines of
    verse, are not judged; nor is a manuscript that is far too long as a whole.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.reading._claims import Matter, asked, claims
from proofkit.issue import Issue
from proofkit.reading.bands import band_named
from proofkit.settings import Settings

NAME = "reading/long-sentence"
NEEDS = frozenset({Need.TEXT})
_CONFIDENCE = 0.4


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue, at the first words of the longest sentence."""
    found = claims(book, band_named(settings.age_band))
    long = [claim for claim in found if claim.matter is Matter.LONG_SENTENCE]
    if long:
        message = f"a sentence of {long[0].amount} words: is there a place for a full stop?"
        yield asked(book, long, check=NAME, message=message, confidence=_CONFIDENCE)
