"""A capital after a comma, as if a sentence began there.

What it finds
    A comma and then a small word with a capital (*, She*; *, The*), where no name, no speech and no line of
    verse asks for it: either the comma should be a full stop or the capital small.

Why a reader minds
    The comma says go on, the capital says stop.

Example
    He gave it to me for nothing, She said so.

Better
    He gave it to me for nothing. She said so.

When to let it stand
    Where the word is part of a name or title, or starts a line of verse.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from proofkit.analysis import Analysis
from proofkit.book import Book, Page
from proofkit.checks.check import Need
from proofkit.checks.sentences._verse import FUNCTION_WORDS, in_verse, verse_at
from proofkit.checks.spacing._gaps import undisturbed
from proofkit.checks.speech._seams import paragraph_at
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words import nearby
from proofkit.words.lists import word_set

NAME = "sentences/capital-after-comma"
NEEDS = frozenset({Need.TEXT})

_PLACE = re.compile(rf"(?P<before>[^\W\d_]+), (?P<word>{FUNCTION_WORDS})(?= (?P<next>[\w'’-]+))")
_SUBJECTS = word_set("He She It They We This That These Those The A An His Her Their My There")
_ADDRESS = re.compile(r"\b(?:Dear|Dearest|My dear)\b[^.!?]*$")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield each capital that a comma comes before."""
    if in_verse(book):
        return
    for page in book.pages:
        for match in _PLACE.finditer(page.prose):
            if not undisturbed(page, *match.span()) or _named(page, match):
                continue
            if verse_at(page, *paragraph_at(page, match.start())):
                continue
            before, word = match["before"], match["word"]
            readings = [f"{before}. {word}", f"{before}, {word.lower()}"]
            if word not in _SUBJECTS:
                readings.reverse()
            yield issue_at(
                book,
                page.span(*match.span()),
                check=NAME,
                tier=Tier.ERROR,
                message="a comma, and then a capital",
                suggestions=readings,
                confidence=0.8,
            )


def _named(page: Page, match: re.Match[str]) -> bool:
    """Whether the capital belongs to a name or title, or the comma to a letter's greeting."""
    return (
        match["next"][0].isupper()
        or _ADDRESS.search(nearby.before(page.prose, match.start())) is not None
    )
