"""Page or spread numbers that skip, repeat, run backwards or lie on the wrong side.

What it finds
    A label such as "Page 7" or "Spread 4" whose number doesn't follow from the one before it, and
    "Pages 5-6", which can't lie open side by side: a left page has an even number, a right page
    an odd one.

Why a reader minds
    The designer lays the book out by these numbers. A page too many or too few is found out late
    and costs most.

Example
    Pages 4-5, then Pages 8-9

Better
    Pages 4-5, then Pages 6-7

When to let it stand
    When pages without text are left out of the manuscript on purpose; then say so in a note.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Page
from proofkit.checks.check import Need
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings

NAME = "pages/numbers-out-of-order"
NEEDS = frozenset({Need.TEXT})

_SPREAD = re.compile(r"(?i)\b(?:spreads?|openings?|dps|double[- ]pages?)\b\D{0,4}(\d*)")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """At most one issue a page for page numbers, and one for spread numbers."""
    yield from _faults(book, _spread_numbers, "spread", check_pairs=False)
    yield from _faults(book, _page_numbers, "page", check_pairs=not _pairs_begin_odd(book))


def _faults(
    book: Book, numbers_of: Callable[[Page], tuple[int, ...]], what: str, *, check_pairs: bool
) -> Iterator[Issue]:
    numbered = [page for page in book.pages if numbers_of(page)]
    before: tuple[int, ...] = ()
    for place, page in enumerate(numbered):
        numbers = numbers_of(page)
        last = numbered[place - 1] if place else None
        after = numbers_of(numbered[place + 1]) if place + 1 < len(numbered) else ()
        skip = last is not None and page.number > last.number + 1
        fault = _order_fault(numbers, before, what, skip=skip)
        if fault and last and _are_sides(last, page, numbers_of):
            fault = ""
        if fault and after and after[0] == before[-1] + len(numbers) + 1:
            due = tuple(range(before[-1] + 1, after[0]))
            fault = f"{what} {numbers[0]} stands where {what} {due[0]} is due"
            numbers = due
        if not fault and check_pairs:
            fault = _pair_fault(numbers)
        if fault:
            yield _issue(book, page, fault)
        before = numbers


def _issue(book: Book, page: Page, message: str) -> Issue:
    return issue_at(
        book,
        page.span(0, 0),
        check=NAME,
        tier=Tier.QUERY,
        message=message,
        confidence=0.85,
    )


def _spread_numbers(page: Page) -> tuple[int, ...]:
    match = _SPREAD.search(page.label)
    if not match:
        return ()
    number = int(match[1]) if match[1] else page.spread
    return (number,) if number else ()


def _page_numbers(page: Page) -> tuple[int, ...]:
    """The page numbers that the author wrote above a page."""
    return page.folios if page.label else ()


def _are_sides(one: Page, other: Page, numbers_of: Callable[[Page], tuple[int, ...]]) -> bool:
    """Whether both are sides of one spread: the same number, and labels that tell left from right."""
    return numbers_of(one) == numbers_of(other) and one.label != other.label


def _pairs_begin_odd(book: Book) -> bool:
    """Whether the author numbers spreads 1-2, 3-4 all through: a way of counting, not a slip."""
    firsts = [page.folios[0] for page in book.pages if page.label and len(page.folios) == 2]
    return sum(first % 2 for first in firsts) * 2 > len(firsts)


def _order_fault(
    numbers: tuple[int, ...], before: tuple[int, ...], what: str, *, skip: bool
) -> str:
    """What is wrong with the numbers after those ``before``; pages without number may lie between."""
    if not before:
        return ""
    first, last = numbers[0], before[-1]
    if first == last:
        return f"{what} {first} comes twice"
    if first < last:
        return f"{what} {first} comes after {what} {last}"
    if first > last + 1 and not skip:
        return f"{what} {first} comes straight after {what} {last}"
    return ""


def _pair_fault(numbers: tuple[int, ...]) -> str:
    """What is wrong with a left and a right page."""
    if len(numbers) != 2:
        return ""
    left, right = numbers
    if right != left + 1:
        return f"pages {left} and {right} don't follow each other"
    if left % 2:
        return f"pages {left} and {right} don't face each other: a left page has an even number"
    return ""
