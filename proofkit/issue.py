"""What a check says: one thing found at one place. It knows nothing of colour, width or files."""

from __future__ import annotations

import hashlib
import re
import unicodedata
from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass, replace
from enum import StrEnum

from proofkit.book import Book, Span

_KEY_LENGTH = 7
# No vowels, no look-alikes: a key can be read aloud and never spells a word.
_KEY_LETTERS = "23456789bcdfghjkmnpqrstvwxz"
_NEIGHBOURS = 2
_EARSHOT = 200  # characters to look for them in at first; a page may hold a whole novel
_FARTHEST = 12_800  # characters beyond which a word is nobody's neighbour, however wide the gap
_WORD = re.compile(r"\w+")


class Tier(StrEnum):
    """How the issue is put to the author."""

    ERROR = "error"  # wrong in published English
    QUERY = "query"  # a careful proofreader would ask


@dataclass(frozen=True, slots=True, kw_only=True)
class Issue:
    """One issue. ``suggestions`` replace the span's characters exactly as they stand.

    ``confidence`` is the share of such issues that are true, 0 to 1. ``related`` are the other
    places of the same matter. ``key`` is empty until ``with_keys`` gives it.
    """

    check: str
    tier: Tier
    span: Span
    quote: str
    message: str
    suggestions: tuple[str, ...] = ()
    confidence: float
    related: tuple[Span, ...] = ()
    key: str = ""


def issue_at(
    book: Book,
    span: Span,
    *,
    check: str,
    tier: Tier,
    message: str,
    confidence: float,
    suggestions: Iterable[str] = (),
    related: Iterable[Span] = (),
) -> Issue:
    """An issue whose quote is taken from the book."""
    return Issue(
        check=check,
        tier=tier,
        span=span,
        quote=book.quote(span),
        message=message,
        suggestions=tuple(suggestions),
        confidence=confidence,
        related=tuple(related),
    )


def with_keys(book: Book, issues: Iterable[Issue]) -> tuple[Issue, ...]:
    """The issues with their keys, in the order of the book.

    A key is made from the check, the words at fault and their neighbours, never from a position, so
    it survives edits elsewhere. Slips that agree in all of that are told apart by counting them in
    the order of the book.
    """
    in_order = sorted(issues, key=lambda issue: (issue.span, issue.check))
    seen: Counter[str] = Counter()
    keyed = []
    for issue in in_order:
        matter = matter_of(book, issue)
        seen[matter] += 1
        keyed.append(replace(issue, key=key_of(matter, seen[matter])))
    return tuple(keyed)


def matter_of(book: Book, issue: Issue) -> str:
    """What an issue's key is made from, but for the count: its check, its words and their neighbours."""
    text = book.page(issue.span.page).text
    start, end = issue.span.start, issue.span.end
    quote = unicodedata.normalize("NFC", " ".join(issue.quote.split()))
    return "\x1f".join([issue.check, quote, *_before(text, start), "\x1e", *_after(text, end)])


def _before(text: str, at: int) -> list[str]:
    """The neighbours to the left; the window grows until its own edge can have cut none of them."""
    earshot, words = _EARSHOT, _words(text[max(0, at - _EARSHOT) : at])
    while len(words) <= _NEIGHBOURS and at > earshot < _FARTHEST:
        earshot *= 2
        words = _words(text[max(0, at - earshot) : at])
    return words[-_NEIGHBOURS:]


def _after(text: str, at: int) -> list[str]:
    earshot, words = _EARSHOT, _words(text[at : at + _EARSHOT])
    while len(words) <= _NEIGHBOURS and at + earshot < len(text) and earshot < _FARTHEST:
        earshot *= 2
        words = _words(text[at : at + earshot])
    return words[:_NEIGHBOURS]


def _words(text: str) -> list[str]:
    """The words, whichever way a file spells a letter with an accent."""
    return _WORD.findall(unicodedata.normalize("NFC", text))


def key_of(matter: str, count: int) -> str:
    """The key of the ``count``th issue, from 1, about a matter."""
    digest = hashlib.sha256(f"{matter}\x1f{count}".encode()).digest()
    number = int.from_bytes(digest[:8], "big")
    letters = []
    for _ in range(_KEY_LENGTH):
        number, index = divmod(number, len(_KEY_LETTERS))
        letters.append(_KEY_LETTERS[index])
    return "".join(letters)
