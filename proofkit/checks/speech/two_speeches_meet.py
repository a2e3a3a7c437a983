"""Two speeches side by side, and nobody says who speaks the second.

What it finds
    A closing mark and an opening one with nothing between them, in one paragraph, where no *said the bear*
    follows the second speech. Either one and the same goes on speaking, and the two marks go; or
    somebody answers, who wants a new line. All such places are one query.

Why a reader minds
    Whoever reads aloud has no time to find out whose voice comes next.

Example
    "Who took my hat?" "I did."

Better
    "Who took my hat?"

    "I did."

When to let it stand
    Where the two are quoted as one rush of voices, and everybody hears who is who.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.speech._seams import Seam, first_word_end, last_word_start, seams
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.reporting import has_reporting_verb, reports

NAME = "speech/two-speeches-meet"
NEEDS = frozenset({Need.TEXT})

_WHOLE = (".", "!", "?", "…")
_ANSWERS = re.compile(
    r"(?:yes|no|oh|well|all right|thank|of course|but|and what|why|because|me|not)\b", re.IGNORECASE
)


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue for the book, on the first such place."""
    places = [(seam.previous, seam) for seam in seams(book) if seam.previous and _meet(seam)]
    if not places:
        return
    first, second = places[0]
    page = book.page(first.closing.span.page)
    start = last_word_start(page, first.closing.span.start)
    end = second.opening.span.end + first_word_end(second.inner)
    last = page.text[start : first.closing.span.start]
    word = page.text[second.opening.span.end : end]
    on = f"{last} {word}"
    answered = f"{last}{first.closing.text}\n\n{second.opening.text}{word}"
    yield issue_at(
        book,
        page.span(start, end),
        check=NAME,
        tier=Tier.QUERY,
        message="two speeches meet: one speaker, or a new line for the second",
        suggestions=[answered, on] if _ANSWERS.match(second.inner.lstrip()) else [on, answered],
        confidence=0.5,
        related=[page_seam.opening.span for _, page_seam in places[1:]],
    )


def _meet(seam: Seam) -> bool:
    """Whether nothing but a space parts it from the speech before, and nobody is said to speak it."""
    return (
        not seam.before.strip()
        and seam.previous is not None
        and seam.previous.inner.rstrip().endswith(_WHOLE)
        and seam.previous.closing.span.page == seam.opening.span.page
        and not reports(seam.after, loosely=True)
        and not has_reporting_verb(seam.previous.before)
    )
