"""A word of several parts without its hyphens.

What it finds
    Words that are one only by their hyphens: *mother in law, merry go round, topsy turvy*, and adjectives of
    a describing word and a part of somebody: *a kind hearted giant, three legged, a fierce looking
    dog*. Where the same words may stand side by side by chance (*the big dog headed home*), or people
    write them either way, they are left alone.

Why a reader minds
    "A red nosed clown" makes the child look for something red, and then for a nosed clown.

Example
    The kind hearted giant lifted her mother in law.

Better
    The kind-hearted giant lifted her mother-in-law.

When to let it stand
    Where your dictionary, or the style of the series, writes them apart.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.checks.spelling._hyphened import between, fixed, made_of_parts
from proofkit.checks.spelling._rows import rows
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings

NAME = "spelling/missing-hyphen"
NEEDS = frozenset({Need.LANGUAGE_MODEL})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield an issue for each place; for a habit of the book, one with the other places as related."""
    places: dict[str, list[Span]] = defaultdict(list)
    for page in book.pages:
        tokens = analysis.page(page.number).tokens
        prose = page.prose
        for found in (*fixed(prose), *made_of_parts(tokens, prose), *between(tokens, prose)):
            places[found.reading].append(page.span(found.start, found.end))
    for reading, spans in places.items():
        for span, related in rows(spans):
            yield issue_at(
                book,
                span,
                check=NAME,
                tier=Tier.ERROR,
                message="one word, with hyphens"
                if reading.count("-") > 1
                else "one word, with a hyphen",
                suggestions=(reading,),
                confidence=0.75,
                related=related,
            )
