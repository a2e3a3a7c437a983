"""A sentence that begins with a small letter.

What it finds
    A small letter after a full stop, at the start of a page or paragraph whose forerunner ended
    with a stop, and after a question or exclamation mark in narration where no *he said* follows.
    Short forms (*e.g.*), dots of omission and words like *iPhone* are left alone, and so is a book
    that writes everything small.

Why a reader minds
    The capital tells the voice to start anew.

Example
    The bear sat down. he was tired.

Better
    The bear sat down. He was tired.

When to let it stand
    In a child's own handwriting, or in a book that does without capitals.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Page, Role, Span
from proofkit.checks.check import Need
from proofkit.checks.sentences._verse import verse_at
from proofkit.checks.spacing._gaps import undisturbed
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words import nearby
from proofkit.words.abbreviations import ends_in_abbreviation
from proofkit.words.lists import word_set
from proofkit.words.quotations import Quotations, quotations_of
from proofkit.words.reporting import reports

NAME = "sentences/no-capital-at-start"
NEEDS = frozenset({Need.TEXT})

_AFTER_STOP = re.compile(
    r"(?<![.…])(?P<stop>[.!?])(?P<marks>[\"”'’)]*)(?P<space>[ \u00a0]+)(?P<word>[a-z][\w'’-]*)"
)
_FIRST_WORD = re.compile(r"\s*(?P<word>[a-z][\w'’-]*)")
_ENDED = re.compile(r"(?<![.…])[.!?][\"”'’)]*\s*$")
_JOINING = word_set("and but or so then as while when because if until before after who which with")
# After a cry the story may go on in the same sentence (Splash! went the frog); not with one of these.
_SUBJECTS = word_set("he she it they we i the his her my their there")
_CRY = re.compile(r"\b(?:oh|ah|o|alas|ha|hey|yes|no|why|well|dear me|lo)$", re.I)
_HABIT = 8


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield each sentence that begins small; a book that always does so as nothing."""
    quotations = quotations_of(book)
    places = [*_inside(book, quotations), *_at_starts(book)]
    if len(places) > _HABIT and 100 * len(places) > book.words:
        return
    for span, confidence in places:
        word = book.quote(span)
        capital = word[0].upper() + word[1:]
        yield issue_at(
            book,
            span,
            check=NAME,
            tier=Tier.ERROR,
            message="no capital at the start of the sentence",
            suggestions=[capital],
            confidence=confidence,
        )


def _inside(book: Book, quotations: Quotations) -> Iterator[tuple[Span, float]]:
    for page in book.pages:
        prose = page.prose
        for match in _AFTER_STOP.finditer(prose):
            if re.search(r"[A-Z]", match["word"]) or not undisturbed(page, *match.span()):
                continue
            sure = _sure(match, prose, spoken=quotations.speaks(page.number, match.start("word")))
            if sure:
                yield page.span(match.start("word"), match.end("word")), sure


def _sure(match: re.Match[str], prose: str, *, spoken: bool) -> float:
    """How sure it is that a sentence begins here; 0 where it is not."""
    rest = nearby.after(prose, match.start("word"))
    before = nearby.before(prose, match.end("stop"))
    if prose[match.start() - 1 : match.start()] in ("", " ") or not before[:-1].strip():
        return 0.0
    if match["stop"] == ".":
        return _sure_after_stop(match, before, rest)
    if spoken or match["marks"] or reports(rest, loosely=True) or match["word"] not in _SUBJECTS:
        return 0.0
    words = re.split(r"[.!?…\n\"“”,:;–—]", before[:-1])[-1]
    return 0.6 if len(words.split()) > 3 and not _CRY.search(words) else 0.0


def _sure_after_stop(match: re.Match[str], before: str, rest: str) -> float:
    if ends_in_abbreviation(before) or before[-2:-1].isdigit():
        return 0.0
    if match["marks"]:
        return 0.0 if reports(rest, loosely=True) or match["word"] in _JOINING else 0.75
    return 0.9


def _at_starts(book: Book) -> Iterator[tuple[Span, float]]:
    """Pages and paragraphs that begin small although the one before them had ended."""
    ended = False
    for page in book.pages:
        for paragraph in page.paragraphs:
            words = page.prose[paragraph.start : paragraph.end]
            if paragraph.role is not Role.STORY or not words.strip():
                continue
            match = _FIRST_WORD.match(page.prose, paragraph.start, paragraph.end)
            if match and ended and _begins(page, match, paragraph.start, paragraph.end):
                yield page.span(match.start("word"), match.end("word")), 0.85
            ended = _ENDED.search(words) is not None


def _begins(page: Page, match: re.Match[str], start: int, end: int) -> bool:
    word = match["word"]
    if re.search(r"[A-Z]", word) or reports(page.prose[match.start("word") : end], loosely=True):
        return False
    return not verse_at(page, start, end) and word not in _JOINING
