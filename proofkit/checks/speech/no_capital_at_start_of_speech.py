"""Speech that begins with a small letter.

What it finds
    A speech of several words that starts a sentence and has no capital. A speech that a *he said*
    interrupts goes on with a small letter, and is left alone; so is speech that begins in the middle, after
    dots or a dash, and a word or phrase that is only quoted.

Why a reader minds
    A spoken sentence starts with a capital, wherever it stands in the narrator's.

Example
    The hen said, "come in, all of you."

Better
    The hen said, "Come in, all of you."

When to let it stand
    Where the words in marks are only a part of the narrator's sentence.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.speech._seams import Seam, seams
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.reporting import has_reporting_verb

NAME = "speech/no-capital-at-start-of-speech"
NEEDS = frozenset({Need.TEXT})

_FIRST = re.compile(r"(?P<word>[a-z][\w'’]*)(?![\w’'-]*[A-Z])")
_BROUGHT_IN = re.compile(r"(?:^|[.!?]\s)(?P<clause>[^.!?]*)[,:]\s*$")
_ENDS = (".", "!", "?", ",")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield each speech that should begin with a capital."""
    for seam in seams(book):
        first = _FIRST.match(seam.inner)
        if first is None or seam.words < 3 or not seam.inner.rstrip().endswith(_ENDS):
            continue
        if not _starts_sentence(seam):
            continue
        page, at = book.page(seam.opening.span.page), seam.opening.span.end
        word = first["word"]
        yield issue_at(
            book,
            page.span(at, at + len(word)),
            check=NAME,
            tier=Tier.ERROR,
            message="no capital at the start of the speech",
            suggestions=[word[0].upper() + word[1:]],
            confidence=0.8,
        )


def _starts_sentence(seam: Seam) -> bool:
    between = seam.before.strip()
    if between and between[-1] in ".!?":
        return True
    if seam.previous is not None and seam.previous.inner.rstrip()[-1:] not in (".", "!", "?"):
        return False
    if not between:
        return seam.previous is None
    brought = _BROUGHT_IN.search(seam.before)
    if brought is None or not has_reporting_verb(brought["clause"]):
        return False
    return seam.previous is None or brought.start() > 0
