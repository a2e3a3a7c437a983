"""A dash as it would stand in another form."""

from __future__ import annotations

from collections.abc import Mapping

from proofkit.book import Book, Span

RULES = {
    "em rule": "—",
    "en rule": "–",
    "hyphen": "-",
    "two hyphens": "--",
}
SAYS: Mapping[str, str] = {
    "spaced en rule": "a spaced en rule",
    "em rule": "an em rule",
    "spaced em rule": "a spaced em rule",
    "en rule": "an en rule without spaces",
    "spaced hyphen": "a spaced hyphen",
    "hyphen": "a hyphen",
    "two hyphens": "two hyphens",
    "spaced two hyphens": "two hyphens with spaces",
    "a space on one side": "a dash with a space on one side",
}


def between_words(book: Book, span: Span, form: str) -> tuple[Span, str]:
    """A dash with a word after it: what of ``span`` to replace, and by what."""
    spaced = form.startswith("spaced ")
    rule = RULES[form.removeprefix("spaced ")]
    own = book.quote(span)
    if own == f" {own.strip()} " and spaced:
        return Span(page=span.page, start=span.start + 1, end=span.end - 1), rule
    return span, f" {rule} " if spaced else rule


def after_word(book: Book, span: Span, form: str) -> tuple[Span, str]:
    """A dash with no word after it, whose space after it stays as it is."""
    spaced = form.startswith("spaced ")
    rule = RULES[form.removeprefix("spaced ")]
    own = book.quote(span).rstrip(" ")
    end = span.start + len(own)
    if own.startswith(" ") and spaced:
        return Span(page=span.page, start=span.start + 1, end=end), rule
    return Span(page=span.page, start=span.start, end=end), f" {rule}" if spaced else rule
