"""A line that should rhyme, and doesn't.

What it finds
    In verse that rhymes by a scheme (in couplets, or every second line, and so on), a line end that
    by the scheme should rhyme with one before it and has not even a near rhyme.

Why a reader minds
    A child who listens waits for the rhyme, and often says it first. Where it fails to come, the
    verse seems to have a hole; often an edit changed the word and left its partner behind.

Example
    The Cow wandered down to the old water trough,
    and there in the mud was a beautiful stone.

Better
    The Cow wandered down to the old water trough,
    and there she was taken with sneezes and cough.

When to let it stand
    Some rhymes live only in the author's own speech (bath with hearth, poor with paw), and a poem may
    stop rhyming on purpose, for a joke or an ending.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.verse._read import verse_read
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings

NAME = "verse/rhyme-fails"
NEEDS = frozenset({Need.TEXT})
_CONFIDENCE = 0.6


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one query for each rhyme that fails, at the later of the two words."""
    verse = verse_read(book, analysis.english)
    for failed in verse.failed_rhymes if verse else ():
        yield issue_at(
            book,
            failed.span,
            check=NAME,
            tier=Tier.QUERY,
            message=f"the pattern wants a rhyme with “{failed.partner}” here",
            confidence=_CONFIDENCE,
            related=(failed.partner_span,),
        )
