"""Whether a space stands after an ellipsis between words: *well… yes* or *well…yes*."""

from __future__ import annotations

import re
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.habits._ellipses import ellipses
from proofkit.habits._places import usage_of
from proofkit.habits.usage import Usage

MATTER = "space-after-ellipsis"
FORMS = ("a space", "no space")

_WORD_BEFORE = re.compile(r"(\w+) ?$")
_WORD_AFTER = re.compile(r" ?(\w+)")
_NEAR = 40


def usage(book: Book, analysis: Analysis) -> Usage:  # noqa: ARG001 - every matter takes both
    """Every ellipsis with a word on both sides, with the space after it.

    A stutter or a sound again and again (drip…drip) closes up in any book.
    """
    return usage_of(MATTER, _places(book))


def _places(book: Book) -> Iterator[tuple[str, Span]]:
    for own in ellipses(book):
        text = book.page(own.span.page).prose
        before = _WORD_BEFORE.search(text, max(0, own.span.start - _NEAR), own.span.start)
        after = _WORD_AFTER.match(text, own.span.end)
        if before is None or after is None or _is_again(before[1], after[1]):
            continue
        spaced = own.after == " "
        end = own.span.end + spaced
        yield FORMS[not spaced], Span(page=own.span.page, start=own.span.start, end=end)


def _is_again(before: str, after: str) -> bool:
    return after.lower().startswith(before.lower()) or before.lower().endswith(after.lower())
