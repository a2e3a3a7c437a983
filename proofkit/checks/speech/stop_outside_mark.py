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
from proofkit.words.quotations import Quotations, quotations_of
from proofkit.words.reporting import has_reporting_verb, reports

NAME = "speech/stop-outside-mark"
NEEDS = frozenset({Need.TEXT})

_STOP = re.compile(r"[.,](?![.\w])")
_BROUGHT_IN = re.compile(r"(?P<clause>[^.!?,:]*)[,:]\s*$")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield each stop that stands on the wrong side of a closing mark."""
    quotations = quotations_of(book)
    for seam in seams(book, quotations):
        stop = _STOP.match(seam.after)
        if stop is None or _nested(seam, quotations):
            continue
        inner = seam.inner.rstrip()
        if inner[-1:] in ".!?…":
            if stop.group() == "." and not inner.endswith("..") and _speech(seam):
                yield _issue(book, seam, "", confidence=0.75)
        elif inner[-1:].isalnum():
            if _speech(seam) and (stop.group() == "." or _closes_before_clause(seam)):
                yield _issue(book, seam, stop.group(), confidence=0.75)
            elif analysis.english is English.AMERICAN:
                yield _issue(book, seam, stop.group(), confidence=0.6)


def _nested(seam: Seam, quotations: Quotations) -> bool:
    """Whether another mark follows at once: then the stop belongs to the speech around."""
    return len(seam.after) > 1 and seam.after[1] in "\"'’”"


def _speech(seam: Seam) -> bool:
    """Whether the words are a whole sentence that somebody says."""
    if not seam.inner.lstrip()[:1].isupper():
        return False
    brought = _BROUGHT_IN.search(seam.before)
    if brought is not None:
        return has_reporting_verb(brought["clause"])
    return not seam.before.strip() and seam.words > 2


def _closes_before_clause(seam: Seam) -> bool:
    """Whether *he said* follows, and does not interrupt a spoken sentence (*'Have you', he said, 'a hat?'*)."""
    return reports(seam.after[1:]) and not seam.after.rstrip().endswith(",")


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
