"""A comma before speech, though nobody says anything in the sentence before it.

What it finds
    A sentence that is whole in itself and has no verb of speaking, joined to a speech by a comma.
    A verb like *smiled* or *laughed* is asked about less firmly, since many writers let it stand for
    *said with a smile*.

Why a reader minds
    Nobody can limp, wave or look a sentence.

Example
    The old man began to limp, "Please can you help me?"

Better
    The old man began to limp. "Please can you help me?"

When to let it stand
    Where you hear the speech in the verb, as in *she sang* or *he laughed*.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.speech._seams import Seam, last_word_start, seams
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.lists import word_set
from proofkit.words.reporting import has_reporting_verb, reports

NAME = "speech/comma-before-new-sentence"
NEEDS = frozenset({Need.TEXT})

_CLAUSE = re.compile(r"(?P<clause>[^.!?:;\n]*),\s*$")
_BRINGS_IN = word_set(
    "voice voices word words answer reply cry song question thought thoughts saying reads read wrote "
    "spoke speak speaking speaks sounded heard hear hears made makes make like with is was be that "
    "talking talked told tell message note letter story rhyme poem sign title called named meaning means meant "
    "sounds sound written printed learned learnt"
)
_SUBJECT = re.compile(
    r"^\s*(?:He|She|It|They|We|I|The \w+|A \w+|His \w+|Her \w+|Their \w+|My \w+|[A-Z][a-z]+)\b.*\b(?:\w{2,}ed|\w+s|"
    r"ran|began|came|went|crept|swam|sank|stole|slid|spun|dug|hid|did|blew|broke|caught|fed|sat|stood|took|gave|shook|threw|put|held|fell|got|rose|woke|bent|flew|left|kept|drew|swung)\b"
)
_WORD = re.compile(r"[^\W\d_]+")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield each speech that a comma joins to a sentence which doesn't bring it in."""
    for seam in seams(book):
        match = _CLAUSE.search(seam.before)
        if match is None or not _whole(match["clause"]) or not _new_sentence(seam):
            continue
        page, mark = book.page(seam.opening.span.page), seam.opening.span
        start = last_word_start(page, mark.start)
        word = page.prose[start : mark.start].rstrip().rstrip(",")
        yield issue_at(
            book,
            page.span(start, mark.end),
            check=NAME,
            tier=Tier.QUERY,
            message="a comma, but nobody speaks in the sentence before it",
            suggestions=[f"{word}. {seam.opening.text}"],
            confidence=0.4 if has_reporting_verb(match["clause"], loosely=True) else 0.55,
        )


def _whole(clause: str) -> bool:
    """Whether the words look like a sentence of their own that speech has no part in."""
    words = {word.lower() for word in _WORD.findall(clause)}
    if words & _BRINGS_IN or has_reporting_verb(clause):
        return False
    return len(words) > 1 and _SUBJECT.match(clause) is not None


def _new_sentence(seam: Seam) -> bool:
    """Whether the speech is a sentence, and no *he said* comes after it."""
    inner = seam.inner.strip()
    if not inner[:1].isupper() or seam.words < 2 or inner[-1:] not in ".!?":
        return False
    return not reports(seam.after, loosely=True) and not seam.goes_on
