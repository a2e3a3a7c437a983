"""How the book writes OK: OK, okay, O.K., ok."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.habits._places import usage_of
from proofkit.habits.usage import Usage
from proofkit.words.vocabulary import opens_sentence

MATTER = "ok"
FORMS = ("OK", "okay", "O.K.", "ok")

_OK = re.compile(r"(?<![\w.’'-])(?:OK|[Oo]k|O\.K\.|[Oo]\.k\.|O\.K|(?i:okay))(?![\w-])")


def usage(book: Book, analysis: Analysis) -> Usage:  # noqa: ARG001 - every matter takes both
    """Where the book has which; "Ok" counts as "ok", and "Okay" and "OKAY" as "okay"."""
    return usage_of(MATTER, _places(book))


def in_form(book: Book, span: Span, form: str) -> str:
    """What stands in ``form`` at a place, with a capital where it opens a sentence."""
    opens = opens_sentence(book.page(span.page).text, span.start)
    return form[:1].upper() + form[1:] if opens and form in ("okay", "ok") else form


def _places(book: Book) -> Iterator[tuple[str, Span]]:
    for page in book.pages:
        for match in _OK.finditer(page.prose):
            yield _form(match[0]), page.span(*match.span())


def _form(written: str) -> str:
    if "." in written:
        return "O.K."
    return "okay" if written.lower() == "okay" else "OK" if written == "OK" else "ok"


def decided_by(words: Sequence[str]) -> str | None:
    """The form that the author's list of words has, if it has one."""
    return next((_form(word) for word in words if _OK.fullmatch(word)), None)
