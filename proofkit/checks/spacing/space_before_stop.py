"""A space stands before a comma, a full stop or another stop.

What it finds
    A word, then one or more spaces, then a comma, full stop, semicolon, colon, question mark or
    exclamation mark. Where the next word sticks to the stop as well, both are mended at once.

Why a reader minds
    The stop drifts away from its word, and at a line's end it can fall onto the next line alone.

Example
    Then the bear slept .

Better
    Then the bear slept.

When to let it stand
    Never in English. Marks of omission with spaces between the dots are left alone.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.checks.spacing._gaps import capitalised, spaced, undisturbed
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words import nearby

NAME = "spacing/space-before-stop"
NEEDS = frozenset({Need.TEXT})

_HABIT = 5  # more than this is one habit, told once
_PLACE = re.compile(
    r"(?P<word>[^\W_][\w'’-]*[)\"”]?)(?P<gap>[ \u00a0\u202f]+)(?P<stop>[,.;:!?]+)(?P<rest>[^\W_][^\s\"“”]*)?"
)
_FACE = re.compile(r"[:;][()DPp-]")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield each space before a stop; a habit of them as one issue."""
    places = list(_places(book))
    if len(places) > _HABIT:
        places, more = places[:1], [span for span, _ in places[1:]]
    else:
        more = []
    for span, reading in places:
        yield issue_at(
            book,
            span,
            check=NAME,
            tier=Tier.ERROR,
            message="a space before a stop",
            suggestions=[reading],
            confidence=0.97,
            related=more,
        )


def _places(book: Book) -> Iterator[tuple[Span, str]]:
    for page in book.pages:
        prose = page.prose
        for match in _PLACE.finditer(prose):
            if _meant(match, prose) or not undisturbed(page, *match.span()):
                continue
            reading = match["word"] + match["stop"]
            if match["rest"]:
                rest = spaced(match["rest"])
                reading += " " + (rest if match["stop"] in ",;:" else capitalised(rest))
            yield page.span(*match.span()), reading


def _meant(match: re.Match[str], prose: str) -> bool:
    """Dots with spaces between them, faces, decimals and numbers."""
    after = nearby.after(prose, match.end())
    if match["stop"].startswith("..") or _FACE.match(prose, match.start("stop")):
        return True
    if match["stop"].startswith("."):
        return after.lstrip(" ").startswith(".") or (match["rest"] or "")[:1].isdigit()
    return False
