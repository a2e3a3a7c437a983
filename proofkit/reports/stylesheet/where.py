"""Where the rows of a style sheet stand, in the words that the author has for it."""

from __future__ import annotations

from bisect import bisect_right

from proofkit.book import Role, Span
from proofkit.reports.places import page_name
from proofkit.stylesheet.sheet import StyleSheet


def place(sheet: StyleSheet, span: Span) -> str:
    """The place of a span: "spread 4", "page 6", "paragraph 12"."""
    page = sheet.pages[span.page - 1]
    if sheet.paginated or page.role is not Role.STORY:
        return page_name(page)
    return f"paragraph {max(1, bisect_right(page.paragraphs, span.start))}"


def first_on(sheet: StyleSheet, places: tuple[Span, ...]) -> str:
    """The first place; "" where there is none."""
    return place(sheet, places[0]) if places else ""


def last_on(sheet: StyleSheet, places: tuple[Span, ...]) -> str:
    """The last place; "" where there is none."""
    return place(sheet, places[-1]) if places else ""
