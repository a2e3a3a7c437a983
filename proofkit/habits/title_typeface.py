"""Titles of books and names of ships inside the story: in italics, in marks or plain.

Titles of whole books and names of ships are set in italics, those of songs and short poems in marks
(New Hart's Rules, Chicago); so only places of the same title are compared.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Page, Span
from proofkit.habits._places import usage_of
from proofkit.habits._typeface import FORMS as DRESSES
from proofkit.habits._typeface import MARKS, dress_of
from proofkit.habits.usage import Usage
from proofkit.words.lists import word_set
from proofkit.words.quotations import quotations_of

MATTER = "titles"
FORMS = DRESSES

_SMALL = word_set("a an the of and or in on to for at by with from who that is")
# In marks, a name may be said aloud; only after these is it a title.
_NAMED = re.compile(
    r"\b(?:books?|stor(?:y|ies)|songs?|poems?|rhymes?|tunes?|tales?|plays?|films?|carols?|waltz)\b"
    r"(?: (?:was|is|called|named|of|about|to|it|they))*[,:]? $"
)
_NEAR = 60  # characters
_WORD = re.compile(r"[\w’'-]+")


def usage(book: Book, analysis: Analysis) -> Usage:
    """Every place of every title that is set off somewhere in the book."""
    return usage_of(
        MATTER,
        (
            (form, span)
            for title in titles(book, analysis)
            for form, spans in title.places.items()
            for span in spans
        ),
    )


def titles(book: Book, analysis: Analysis) -> tuple[Usage, ...]:  # noqa: ARG001 - as every habit
    """Each title that is set off somewhere, with all its places; its matter is the title."""
    found = dict.fromkeys(sorted(_set_off(book)))
    return tuple(usage_of(title, _places(book, title)) for title in found)


def _set_off(book: Book) -> Iterator[str]:
    for page in book.pages:
        for start, end in page.emphasis:
            if _is_title(page.prose[start:end]):
                yield page.prose[start:end]
    quotations = quotations_of(book)
    for quotation in (*quotations.doubles, *quotations.singles):
        if quotation.whole and len(quotation.parts) == 1:
            part = quotation.parts[0]
            words = book.quote(part).rstrip(",.")
            page = book.page(part.page)
            # "The Tin Moon" is a title wherever it stands; a tale of "Jack Horner" has him in it, too.
            if (
                words.startswith(("The ", "A "))
                and _is_named(page, part.start - 1)
                and _is_title(words)
            ):
                yield words


def _is_title(text: str) -> bool:
    """Two to six words with the capitals of a title, and no stop among or after them."""
    words = text.split(" ")
    return (
        2 <= len(words) <= 6
        and all(_WORD.fullmatch(word) for word in words)
        and not text.isupper()
        and sum(word[0].isupper() for word in words) >= 2
        and words[0][0].isupper()
        and all(word[0].isupper() or word in _SMALL for word in words)
    )


def _places(book: Book, title: str) -> Iterator[tuple[str, Span]]:
    for page in book.pages:
        for match in re.finditer(rf"(?<![\w-]){re.escape(title)}(?![\w-])", page.prose):
            dress = dress_of(page, *match.span())
            if dress != MARKS or _is_named(page, match.start() - 1):
                yield dress, page.span(*match.span())


def _is_named(page: Page, at: int) -> bool:
    """Whether the words before say that a title comes; without that, marks may hold speech."""
    return _NAMED.search(page.prose, max(0, at - _NEAR), at) is not None
