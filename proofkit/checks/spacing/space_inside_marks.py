"""A space on the inner side of a quotation mark or a bracket.

What it finds
    An opening mark with a space after it, a closing mark with a space before it, and a mark that
    sits on the wrong side of the space: *friend," I said*, where *friend, "I said* is meant.

Why a reader minds
    The mark hangs between two words and no longer shows where the speech begins or ends.

Example
    " Come in, " said the mole.

Better
    "Come in," said the mole.

When to let it stand
    A thin space between two marks that stand together ("‘No’ is what he said").
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Page
from proofkit.checks.check import Need
from proofkit.checks.spacing._gaps import undisturbed
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words import nearby
from proofkit.words.quotation_marks import DOUBLE, SINGLE, Mark
from proofkit.words.quotations import quotations_of

NAME = "spacing/space-inside-marks"
NEEDS = frozenset({Need.TEXT})

_BRACKETS = re.compile(r"\( +[\w'\"“‘]+|[\w'\"”’.!?]+ +\)")
_LAST_WORD = re.compile(r"\S+$")
_NEXT_WORD = re.compile(r"[ \u00a0]+([^\W_][\w'’-]*)")
_WORD_AND_GAP = re.compile(r"([\w'’-]*[\w,.!?])[ \u00a0]+$")
_GLUED = re.compile(r"[^\W_][\w'’-]*")
_Place = tuple[int, int, str]
_Look = Callable[[str, Mark], _Place | None]


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield each mark or bracket with a space on its inner side."""
    for quotation in quotations_of(book).speech:
        for mark in (quotation.opening, *quotation.reopenings):
            if mark is not None:
                yield from _told(book, mark, _after_opening)
        if quotation.closing is not None:
            yield from _told(book, quotation.closing, _before_closing)
    for page in book.pages:
        for match in _BRACKETS.finditer(page.prose):
            if undisturbed(page, *match.span()):
                reading = re.sub(r"(?<=\() +| +(?=\))", "", match.group())
                yield _issue(book, page, (match.start(), match.end(), reading))


def _told(book: Book, mark: Mark, look: _Look) -> Iterator[Issue]:
    page = book.page(mark.span.page)
    place = look(page.prose, mark)
    if place and undisturbed(page, place[0], place[1]):
        yield _issue(book, page, place)


def _after_opening(prose: str, mark: Mark) -> _Place | None:
    at = mark.span.start
    word = _NEXT_WORD.match(prose, mark.span.end)
    if word is None:
        return None
    last = _LAST_WORD.search(nearby.before(prose, at))
    if last is None or prose[at - 1] in "([—–-":
        return at, word.end(), mark.text + word.group(1)
    return at - len(last.group()), word.end(), f"{last.group()} {mark.text}{word.group(1)}"


def _before_closing(prose: str, mark: Mark) -> _Place | None:
    at, end = mark.span.start, mark.span.end
    word = _WORD_AND_GAP.search(nearby.before(prose, at))
    if word is None:
        return None
    start = at - len(word.group())
    reading = word.group(1) + mark.text
    if glued := _GLUED.match(prose, end):
        return start, glued.end(), f"{reading} {glued.group()}"
    return None if prose[end : end + 1] in (*DOUBLE, *SINGLE) else (start, end, reading)


def _issue(book: Book, page: Page, place: _Place) -> Issue:
    start, end, reading = place
    return issue_at(
        book,
        page.span(start, end),
        check=NAME,
        tier=Tier.ERROR,
        message="a space on the wrong side of the mark",
        suggestions=[reading],
        confidence=0.9,
    )
