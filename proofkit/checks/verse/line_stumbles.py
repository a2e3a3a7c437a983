"""A line of verse that leaves the beat of its poem.

What it finds
    In verse of a clear metre, a line with a beat too few or too many; one whose beats come with too
    much or too little between them; a word that the beat would have stressed on the wrong syllable.

Why a reader minds
    Verse is read aloud by someone who has never seen it. The lines before have set the step; where a
    line breaks it the reader stumbles, goes back, and the spell is gone, tonight and every night.

Example
    The friendly cow all red and white,
    I love with heart:

Better
    The friendly cow all red and white,
    I love with all my heart:

When to let it stand
    A line may stop short on purpose, for a surprise or at the end of the poem. Names and places have
    their own stress at home. If you read it aloud twice and do not stumble, it is a good line.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.verse._read import verse_read
from proofkit.issue import Issue, Tier, issue_at
from proofkit.reading.verse.poem import Stumble, StumbleKind
from proofkit.reading.verse.stumbles import LEAST
from proofkit.settings import Settings

NAME = "verse/line-stumbles"
NEEDS = frozenset({Need.TEXT})
_LOWEST, _HIGHEST = 0.5, 0.7
_NUMBERS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one query for each line that stumbles."""
    verse = verse_read(book, analysis.english)
    for line in verse.stumbles if verse else ():
        if line.stumble:
            yield issue_at(
                book,
                line.stumble.span,
                check=NAME,
                tier=Tier.QUERY,
                message=_message(line.stumble, book),
                confidence=_confidence(line.stumble),
            )


def _confidence(stumble: Stumble) -> float:
    return round(min(_HIGHEST, _LOWEST + (stumble.surprise - LEAST) / 10), 2)


def _message(stumble: Stumble, book: Book) -> str:
    if stumble.kind is StumbleKind.STRESS:
        return f"the beat falls on the wrong part of “{book.quote(stumble.span)}”"
    if stumble.kind is StumbleKind.CROWDED:
        return "this line doesn’t fall into the beat of its neighbours"
    missing = abs(stumble.expected - stumble.beats)
    number = _NUMBERS[missing] if missing < len(_NUMBERS) else "many"
    beats = "a beat" if missing == 1 else f"{number} beats"
    much = "short of" if stumble.kind is StumbleKind.SHORT else "longer than"
    return f"this line is {beats} {much} its neighbours"
