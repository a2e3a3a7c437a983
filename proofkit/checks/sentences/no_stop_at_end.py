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
from proofkit.book import Book, Page, Role, Span
from proofkit.checks.check import Need
from proofkit.checks.sentences._broken_off import breaks_off
from proofkit.checks.sentences._stops import stop_for
from proofkit.checks.sentences._verse import in_verse
from proofkit.checks.spacing._gaps import undisturbed
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.quotations import Quotations, quotations_of

NAME = "sentences/no-stop-at-end"
NEEDS = frozenset({Need.TEXT})

_LAST = re.compile(r"(?P<word>[\w'’-]*[^\W_])(?P<marks>['’\"”)]*)\s*$")
_STOPPED = re.compile(r"[.!?…:–—-][*_'’\"”)\]]*\s*$")
_LISTED = re.compile(r"\s*[-–•*·▪◦]\s")
_REPORTED = re.compile(r"\s*[\"“'‘][^\"”]+[,!?][\"”'’] (?:[a-z]+ (?:the |[A-Z])|[A-Z]?\w+ [a-z]+)")
_LEAST = 4  # words: less may be a heading, a label or a cry
_HABIT = 0.75

_Place = tuple[Page, int, int]


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
    said = _said(book, quotations_of(book))
    for place, after in zip_longest(places, places[1:]):
        if _is_prose(*place) and not _in_lines(*place) and not (after and _goes_on(*after)):
            yield from _issue(book, place, after, said)


def _said(book: Book, quotations: Quotations) -> frozenset[Span]:
    """The closing marks that end a sentence which somebody says, and no title or single word."""
    ends = []
    for quotation in quotations.speech:
        opening, closing = quotation.opening, quotation.closing
        if opening is None or closing is None:
            continue
        before = book.page(opening.span.page).prose[: opening.span.start].rstrip(" ")
        if (
            not before
            or before[-1] in "\n,;:.!?…–—-\"”'’"
            or opening.span.page != closing.span.page
        ):
            ends.append(closing.span)
    return frozenset(ends)


def _goes_on(page: Page, start: int, end: int) -> bool:
    """Whether a paragraph may carry on the sentence of the one before: it begins small, or is verse."""
    prose = page.prose[start:end]
    first = prose.lstrip(" \"“'‘(")[:1]
    return first.islower() or first.isdigit() or "\n" in prose.strip()


def _in_lines(page: Page, start: int, end: int) -> bool:
    """Whether the paragraph is an item of a list, or set in lines that do without stops as well."""
    lines = page.prose[start:end].strip().split("\n")
    return _LISTED.match(page.prose, start, end) is not None or not all(
        _STOPPED.search(line) for line in lines[:-1]
    )


def _is_prose(page: Page, start: int, end: int) -> bool:
    """Whether a paragraph is long enough, and not capitalised like a heading or a sign."""
    words = page.prose[start:end].split()
    small = sum(word[0].islower() for word in words)
    return len(words) >= _LEAST and (
        2 * small >= len(words) or _REPORTED.match(page.prose, start, end) is not None
    )


def _issue(
    book: Book, place: _Place, after: _Place | None, said: frozenset[Span]
) -> Iterator[Issue]:
    page, start, end = place
    match = _LAST.search(page.prose, start, end)
    if match is None or not undisturbed(page, match.start(), end):
        return
    word, marks = match["word"], match["marks"]
    if page.prose.endswith("The End", 0, match.end("word")) or (
        not marks and breaks_off(page.prose[start:end], _words_of(after))
    ):
        return
    closing = page.span(match.start("marks"), match.end("marks"))
    stop = stop_for(page.prose[start : match.end("word")])
    yield issue_at(
        book,
        page.span(match.start(), match.end("marks")),
        check=NAME,
        tier=Tier.ERROR,
        message="no full stop at the end of the "
        + ("page" if not page.prose[end:].strip() else "paragraph"),
        suggestions=[f"{word}{stop}{marks}" if closing in said else f"{word}{marks}{stop}"],
        confidence=0.8,
    )


def _words_of(place: _Place | None) -> str | None:
    return place[0].prose[place[1] : place[2]] if place else None
