"""No space after a stop or beside a quotation mark.

What it finds
    Two words stuck together by a comma, a full stop or another stop (*home,a*), and a quotation mark
    that sticks to the words outside it (*said,"Come*, *tree."Now*). Numbers, times, abbreviations
    and addresses are left alone. Where the comma joins two whole sentences, a full stop is offered
    first; where a comma is missing as well as the space (*ready"said*), both
    are put in.

Why a reader minds
    The eye reads one long word; aloud, the pause is lost.

Example
    They came to a village,a very small one.

Better
    They came to a village, a very small one.

When to let it stand
    In a made-up word, or an address of the web.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace

from proofkit.analysis import Analysis
from proofkit.book import Book, Page
from proofkit.checks.check import Need
from proofkit.checks.sentences.comma_splice import glued_splices
from proofkit.checks.spacing._gaps import capitalised, gaps, spaced, undisturbed
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.quotations import Quotations, quotations_of
from proofkit.words.reporting import SAYING, reports

NAME = "spacing/missing-space"
NEEDS = frozenset({Need.LANGUAGE_MODEL})

_CHUNK = re.compile(r"\S+")
_ADDRESS = re.compile(
    r"www|@|//|\d[.:,]\d|\.(?:com|org|net|uk|co|gov|edu|info|html?|docx?|odt|rtf|txt|md|pdf|jpe?g|png)\b", re.I
)  # fmt: skip
_TRIM = "\"“”„'‘’()[].,;:!?…–—*_"
_STOPS = ".,;:!?"


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield each run of characters that lacks a space, mended as a whole."""
    sides = _sides(quotations_of(book))
    for page in book.pages:
        prose = page.prose
        splices = glued_splices(page, analysis.page(page.number))
        for chunk in _CHUNK.finditer(prose):
            if chunk.group()[0] in _STOPS or _ADDRESS.search(chunk.group()):
                continue
            for issue in _in_chunk(book, page, chunk.start(), chunk.end(), sides):
                at = [comma for comma in splices if chunk.start() <= comma < chunk.end()]
                yield _as_two_sentences(issue) if len(at) == 1 else issue


def _as_two_sentences(issue: Issue) -> Issue:
    """The issue with a full stop offered first, where the comma joins two sentences besides."""
    comma, _, after = issue.suggestions[0].partition(", ")
    if not after or ", " in after:
        return issue
    return replace(issue, suggestions=(f"{comma}. {capitalised(after)}", *issue.suggestions))


def _sides(quotations: Quotations) -> dict[tuple[int, int], bool]:
    """For each mark, by page and place, whether it opens."""
    read = quotations.speech if quotations.double else (*quotations.singles, *quotations.doubles)
    return {
        (mark.span.page, mark.span.start): opens
        for q in read
        for mark, opens in (
            (q.opening, True),
            *((m, True) for m in q.reopenings),
            (q.closing, False),
        )
        if mark is not None
    }


def _in_chunk(
    book: Book, page: Page, start: int, end: int, sides: dict[tuple[int, int], bool]
) -> Iterator[Issue]:
    prose = page.prose
    inserts = dict(_beside_marks(prose, page.number, start, end, sides))
    places = sorted([start + at for at in gaps(prose[start:end])] + list(inserts))
    if not places or not undisturbed(page, start, end):
        return
    first = start
    while first < places[0] and prose[first] in _TRIM:
        first += 1
    last = end
    while last > places[-1] + 1 and prose[last - 1] in _TRIM:
        last -= 1
    reading, at = "", first
    for place, text in sorted(inserts.items()):
        reading += spaced(prose[at:place]) + text
        at = place
    yield issue_at(
        book,
        page.span(first, last),
        check=NAME,
        tier=Tier.ERROR,
        message="no space between two words",
        suggestions=[reading + spaced(prose[at:last])],
        confidence=0.95,
    )


def _beside_marks(
    prose: str, page: int, start: int, end: int, sides: dict[tuple[int, int], bool]
) -> Iterator[tuple[int, str]]:
    """Where a space goes beside a quotation mark, and what goes in there."""
    for at in range(start, end):
        opens = sides.get((page, at))
        width = 2 if prose.startswith("''", at) else 1
        if opens and start < at < end - width and _glued_before(prose, at):
            if prose[at - 1].isalpha() and prose[start:at].strip(_TRIM).lower() in SAYING:
                yield at, ", "
            else:
                yield at, " "
        elif opens is False and at + width < end and _glued_after(prose, at + width):
            after = prose[at + width :]
            if prose[at - 1].isalnum() and reports(after):
                yield at, ","
            if not sides.get((page, at + width)):
                yield at + width, " "


def _glued_before(prose: str, at: int) -> bool:
    return prose[at - 1].isalnum() or prose[at - 1] in ',.;:!?"”'


def _glued_after(prose: str, at: int) -> bool:
    following = prose[at:]
    return following[0].isalnum() and re.match(r"(?:s|th|d|ed)\b", following) is None
