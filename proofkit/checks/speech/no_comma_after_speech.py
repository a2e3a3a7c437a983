"""No comma between the speech and *said the fox*.

What it finds
    Speech of several words that ends without any stop and is followed by the words that say who
    spoke.

Why a reader minds
    The comma is where the voice changes back to the narrator's.

Example
    "I will help you" answered the mole.

Better
    "I will help you," answered the mole.

When to let it stand
    Where the words in marks are a title or are only mentioned, not spoken.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.speech._seams import Seam, first_word_end, last_word_start, seams
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.reporting import SAYING, reports

NAME = "speech/no-comma-after-speech"
NEEDS = frozenset({Need.TEXT})

_SPACED = re.compile(r"[ \u00a0]+(?P<first>[^\W\d_]+)")
_ASKS = re.compile(
    r"(?:What|Who|Why|Where|When|How)(?: (?:is|are|was|were|do|does|did|can|will|would|have|has)\b|$)"
    r"|(?:Do|Does|Did|Can|Could|Will|Would|Shall|Is|Are) (?:you|he|she|it|they|we|I|that|this|the)\b"
)
_SPOKEN = re.compile(r"(?:^|[,:.!?]|\b(?:said|asked|cried|replied|answered|shouted))\s*$")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield each speech that runs into its reporting clause without a comma."""
    for seam in seams(book):
        inner = seam.inner.rstrip()
        following = _SPACED.match(seam.after)
        if not inner[-1:].isalnum() or following is None or not reports(seam.after):
            continue
        if _spoken(seam, following["first"]):
            yield _issue(book, seam)


def _spoken(seam: Seam, first: str) -> bool:
    """Whether the words are spoken, not a name or a word that the story talks about."""
    if not seam.inner.lstrip()[:1].isupper() or _SPOKEN.search(seam.before) is None:
        return seam.words > 3 and first.lower() in SAYING and first.islower()
    return first.islower() and (seam.words > 1 or first in SAYING)


def _issue(book: Book, seam: Seam) -> Issue:
    page = book.page(seam.closing.span.page)
    mark = seam.closing.span
    start = last_word_start(page, mark.start)
    end = mark.end + first_word_end(seam.after)
    word, after = page.prose[start : mark.start].rstrip(), page.prose[mark.end : end]
    closer = '"' if seam.closing.text == "''" else seam.closing.text
    stops = ("?", ",") if _ASKS.match(seam.inner) else (",",)
    return issue_at(
        book,
        page.span(start, end),
        check=NAME,
        tier=Tier.ERROR,
        message="no comma between the speech and who spoke",
        suggestions=[f"{word}{stop}{closer}{after}" for stop in stops],
        confidence=0.85,
    )
