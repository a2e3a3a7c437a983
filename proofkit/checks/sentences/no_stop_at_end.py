"""A page or paragraph that ends without a stop.

What it finds
    The last word of a page or paragraph without full stop, question or exclamation mark, in a book
    whose other pages have one, when the next page does not carry the sentence on with a small
    letter. Speech that closes without a stop counts too.

Why a reader minds
    The voice does not know whether to fall; the listener waits for more.

Example
    The goose flew home

Better
    The goose flew home.

When to let it stand
    In headings, lists, signs, verse, and where a sentence runs on over the page on purpose.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from itertools import zip_longest

from proofkit.analysis import Analysis
from proofkit.book import Book, Page, Role
from proofkit.checks.check import Need
from proofkit.checks.sentences._verse import in_verse, verse_at
from proofkit.checks.spacing._gaps import undisturbed
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.lists import word_set

NAME = "sentences/no-stop-at-end"
NEEDS = frozenset({Need.TEXT})

_LAST = re.compile(r"(?P<word>[\w'’-]*[^\W_])(?P<marks>['’\"”)]*)\s*$")
_STOPPED = re.compile(r"[.!?…:–—-][*_'’\"”)\]]*\s*$")
_ASKS = re.compile(
    r"(?:^|[.!?,:]\s+[\"“'‘]?)(?:What|Who|Why|Where|How|When|Do|Does|Did|Can|Could|Will|Would|Shall|Is|Are)"
    r"\s+(?:is|are|was|were|do|does|did|can|will|would|you|he|she|it|they|we|I)\b[^.!?]*$"
)
# A page that ends in one of these is cut off rather than unstopped.
_MID_SENTENCE = word_set(
    "the a an of to and or but as by with at for from in on into is was are am were if that when his my"
)
_LEAST = 4  # words: less may be a heading, a label or a cry
_HABIT = 0.75


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield each page or paragraph that lacks its last stop."""
    places = [
        (page, p.start, p.end)
        for page in book.pages
        for p in page.paragraphs
        if p.role is Role.STORY and page.prose[p.start : p.end].strip()
    ]
    prose = [place for place in places if _is_prose(*place)]
    stopped = sum(_STOPPED.search(page.prose[start:end]) is not None for page, start, end in prose)
    if in_verse(book) or len(prose) < 2 or stopped < _HABIT * (len(prose) - 1):
        return
    for place, after in zip_longest(places, places[1:]):
        if _is_prose(*place) and not verse_at(*place) and not (after and _goes_on(*after)):
            yield from _issue(book, *place)


def _goes_on(page: Page, start: int, end: int) -> bool:
    """Whether a paragraph may carry on the sentence of the one before: it begins small, or is verse."""
    first = page.prose[start:end].lstrip(" \"“'‘(")[:1]
    return first.islower() or first.isdigit() or verse_at(page, start, end)


def _is_prose(page: Page, start: int, end: int) -> bool:
    """Whether a paragraph is long enough, and not capitalised like a heading or a sign."""
    words = page.prose[start:end].split()
    small = sum(word[0].islower() for word in words)
    return len(words) >= _LEAST and 2 * small >= len(words)


def _issue(book: Book, page: Page, start: int, end: int) -> Iterator[Issue]:
    match = _LAST.search(page.prose, start, end)
    if match is None or not undisturbed(page, match.start(), end):
        return
    word, marks = match["word"], match["marks"]
    if word in _MID_SENTENCE or page.prose.endswith("The End", 0, match.end("word")):
        return
    speech = bool(marks) and _ends_speech(page.prose[start : match.start("marks")])
    stop = "?" if _ASKS.search(page.prose[start : match.end("word")]) else "."
    yield issue_at(
        book,
        page.span(match.start(), match.end("marks")),
        check=NAME,
        tier=Tier.ERROR,
        message="no full stop at the end of the "
        + ("page" if not page.prose[end:].strip() else "paragraph"),
        suggestions=[f"{word}{stop}{marks}" if speech or not marks else f"{word}{marks}{stop}"],
        confidence=0.8,
    )


def _ends_speech(words: str) -> bool:
    """Whether the marks at the end close a sentence that somebody says."""
    opened = max(words.rfind(mark) for mark in "\"“‘'")
    before = words[:opened].rstrip() if opened >= 0 else ""
    return opened >= 0 and (not before or before[-1] in ",:.!?")
