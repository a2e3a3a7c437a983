"""A full stop or comma outside the marks of a speech.

What it finds
    Speech without a stop inside and one directly after the closing mark, and a second stop after
    speech that has its own. In British English a quoted word or title keeps the stop outside (*it
    is called "the hole".*) and is left alone; in American English full stops and commas always go
    inside.

Why a reader minds
    The stop belongs to what is said.

Example
    He said, "I am going home".

Better
    He said, "I am going home."

When to let it stand
    In British English, where the words in marks are only part of the sentence.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.speech._seams import Seam, last_word_start, seams
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import English, Settings
from proofkit.words.lists import word_set
from proofkit.words.quotations import Quotations, quotations_of
from proofkit.words.reporting import SAYING, has_reporting_verb, reports

NAME = "speech/stop-outside-mark"
NEEDS = frozenset({Need.TEXT})

_STOP = re.compile(r"[.,](?![.\w])")
_NAMING = word_set("call calls called calling read reads say says said saying")
_BROUGHT_IN = re.compile(r"(?P<clause>[^.!?,:]*)[,:]\s*$")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield each stop that stands on the wrong side of a closing mark."""
    quotations = quotations_of(book)
    every = list(seams(book, quotations))
    inside = _comma_inside(every)
    for seam in every:
        stop = _STOP.match(seam.after)
        if stop is None or _nested(seam, quotations):
            continue
        inner = seam.inner.rstrip()
        if inner[-1:] in ".!?…":
            if stop.group() == "." and not inner.endswith("..") and _speech(seam):
                yield _issue(book, seam, "", confidence=0.75)
        elif inner[-1:].isalnum():
            if _speech(seam) and (
                stop.group() == "." or _closes_before_clause(seam, inside=inside)
            ):
                yield _issue(book, seam, stop.group(), confidence=0.75)
            elif analysis.english is English.AMERICAN:
                yield _issue(book, seam, stop.group(), confidence=0.6)


def _nested(seam: Seam, quotations: Quotations) -> bool:
    """Whether another mark follows at once: then the stop belongs to the speech around."""
    return len(seam.after) > 1 and seam.after[1] in "\"'’”"


def _speech(seam: Seam) -> bool:
    """Whether the words in the marks are something that somebody says, and no word or title."""
    before = seam.before.rstrip()
    if before.endswith((",", ";", "—", "–")) and seam.goes_on:
        return True
    if not seam.inner.lstrip()[:1].isupper():
        return False
    brought = _BROUGHT_IN.search(seam.before)
    if brought is not None:
        return has_reporting_verb(brought["clause"])
    if before and before[-1] not in ".!?…”\"’'":
        last = re.search(r"[a-z]+$", before)
        return last is not None and seam.words > 2 and last.group() in SAYING - _NAMING
    return seam.words > 1 or reports(seam.after[1:])


def _comma_inside(every: list[Seam]) -> bool:
    """Whether the book has the comma inside where *he said* interrupts a spoken sentence."""
    broken = [seam for seam in every if seam.after.rstrip().endswith(",")]
    outside = sum(seam.after.startswith(",") for seam in broken)
    inside = sum(seam.inner.endswith(",") for seam in broken)
    return inside > outside


def _closes_before_clause(seam: Seam, *, inside: bool) -> bool:
    """Whether *he said* follows; a British sentence may be interrupted (*'Have you', he said, 'a hat?'*)."""
    if seam.after.rstrip().endswith(",") and not inside:
        return False
    brought = _BROUGHT_IN.search(seam.before)
    return reports(seam.after[1:]) or (brought is not None and seam.words > 2)


def _issue(book: Book, seam: Seam, stop: str, *, confidence: float) -> Issue:
    page = book.page(seam.closing.span.page)
    mark = seam.closing.span
    start = last_word_start(page, mark.start)
    word = page.prose[start : mark.start].rstrip()
    return issue_at(
        book,
        page.span(start, mark.end + 1),
        check=NAME,
        tier=Tier.ERROR,
        message="the stop belongs inside the marks"
        if stop
        else "one stop too many after the speech",
        suggestions=[word + stop + seam.closing.text],
        confidence=confidence,
    )
