"""A refrain that differs by one word where it comes again.

What it finds
    In verse, a line that stands elsewhere two or more times with one word different, missing or added,
    and nowhere else in a third way.

Why a reader minds
    Children join in with a refrain. One that changes for no reason trips the whole room; most are
    the last trace of an older draft.

Example
    O wind, a-blowing all day long,
    and two pages on
    O wind, a-blowing all night long,

Better
    O wind, a-blowing all day long,

When to let it stand
    A refrain may change once on purpose, most of all at its last return: that is a turn of the story.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.verse._read import verse_read
from proofkit.issue import Issue, Tier, issue_at
from proofkit.reading.verse.poem import OddRefrain
from proofkit.settings import Settings

NAME = "verse/refrain-differs"
NEEDS = frozenset({Need.TEXT})
_CONFIDENCE = 0.45


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one query for each refrain that differs once."""
    verse = verse_read(book, analysis.english)
    for odd in verse.odd_refrains if verse else ():
        yield issue_at(
            book,
            odd.span,
            check=NAME,
            tier=Tier.QUERY,
            message=_message(odd),
            confidence=_CONFIDENCE,
            suggestions=(odd.instead,) if odd.word and odd.instead else (),
            related=odd.places,
        )


def _message(odd: OddRefrain) -> str:
    times = len(odd.places)
    if not odd.instead:
        return f"elsewhere this line is without “{odd.word}” ({times} times)"
    return f"elsewhere this line has “{odd.instead}” ({times} times)"
