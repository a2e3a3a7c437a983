"""Whether a space stands before an ellipsis: *well… yes* or *well … yes*."""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.habits._ellipses import ellipses
from proofkit.habits._places import usage_of
from proofkit.habits.usage import Usage

MATTER = "space-before-ellipsis"
FORMS = ("no space", "a space")

_AFTER_STOP = (",", "!", "?")


def usage(book: Book, analysis: Analysis) -> Usage:  # noqa: ARG001 - every matter takes both
    """Every ellipsis that comes after words in its line, with the space before it."""
    return usage_of(MATTER, _places(book))


def _places(book: Book) -> Iterator[tuple[str, Span]]:
    for own in ellipses(book):
        text = book.page(own.span.page).prose
        if len(own.text.replace(" ", "")) > 3:
            continue  # a full stop comes first, closed up in any book
        spaced = own.before == " "
        before = text[own.span.start - 1 - spaced : own.span.start - spaced]
        # After a stop the points stand for words left out, and have their space.
        if before.isalnum() or (not spaced and before in _AFTER_STOP):
            start = own.span.start - spaced
            yield FORMS[spaced], Span(page=own.span.page, start=start, end=own.span.end)
