"""A comma or a full stop twice.

What it finds
    Two commas, two semicolons, two colons, or just two full stops in a row. Three dots or more are
    marks of omission; *?!* and *!!* are left to the author's voice.

Why a reader minds
    It is a slip of the finger that shows in large type.

Example
    The fox ran home,, and slept.

Better
    The fox ran home, and slept.

When to let it stand
    Never; where a pause is meant, use three dots.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.spacing._gaps import undisturbed
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings

NAME = "marks/doubled-mark"
NEEDS = frozenset({Need.TEXT})

_PLACE = re.compile(r"(?<=[\w\"”’)])(?P<mark>,,+|;;+|::+|(?<!\.)\.\.(?!\.))(?= *(?P<next>\S?))")
_PATH = re.compile(r"\S*(?://|\.\./|\.\.\\)\S*")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield each mark that stands twice."""
    for page in book.pages:
        for match in _PLACE.finditer(page.prose):
            if not undisturbed(page, *match.span()) or _PATH.match(page.prose, match.start() - 1):
                continue
            once = match["mark"][0]
            readings = [once]
            if once == ".":
                readings = ["...", "."] if match["next"].islower() else [".", "..."]
            yield issue_at(
                book,
                page.span(*match.span()),
                check=NAME,
                tier=Tier.ERROR,
                message="a mark twice",
                suggestions=readings,
                confidence=0.9,
            )
