"""The pronoun I in lower case.

What it finds
    The word "i" standing alone, or in i'm, i'll, i've, i'd, where the speaker means himself.

Why a reader minds
    It is one of the first things a child learns to write.

Example
    "Wait for me, i am coming!"

Better
    "Wait for me, I am coming!"

When to let it stand
    When it is the letter of the alphabet, a number in a list, a word of another language, or a book
    that is lower case all through on purpose.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import English, Settings
from proofkit.words.dictionary import dictionary

NAME = "capitals/lower-case-i"
NEEDS = frozenset({Need.TEXT})

_ALONE = re.compile(r"(?<![\w'’.@&/‑-])i(?=(?:['’](?:m|ll|ve|d)\b)?(?![\w'’@&/‑-]))(?!\.\S|\)|\.$)")
_CONTRACTED = re.compile(r"(?<![\w'’.@&/‑-])i(?=['’](?:m|ll|ve|d)\b)")
_LETTER_BEFORE = re.compile(
    r"(?i)\b(?:an|the|letter|letters|little|small|big|your|my|[a-z],?)\s+[\"'“‘]?$"
)
_WORD_BEFORE = re.compile(r"(\w+)\W*$")
_WORD_AFTER = re.compile(r"\W*(\w+)")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue each; one for the whole book where it never has a capital I."""
    spans = sorted(
        page.span(at, at + 1) for page in book.pages for at in _places(page.prose, analysis.english)
    )
    if not spans:
        return
    if len(spans) > 2 and analysis.vocabulary.count("i") == len(spans):
        yield _issue(book, spans[0], Tier.QUERY, 0.5, spans[1:])
        return
    for span in spans:
        yield _issue(book, span, Tier.ERROR, 0.95, [])


def _issue(book: Book, span: Span, tier: Tier, confidence: float, related: list[Span]) -> Issue:
    return issue_at(
        book,
        span,
        check=NAME,
        tier=tier,
        message="a capital for the word I",
        suggestions=("I",),
        confidence=confidence,
        related=related,
    )


def _places(text: str, english: English) -> Iterator[int]:
    contracted = {match.start() for match in _CONTRACTED.finditer(text)}
    yield from contracted
    for match in _ALONE.finditer(text):
        at = match.start()
        if at not in contracted and not _is_letter(text, at) and _among_english(text, at, english):
            yield at


def _is_letter(text: str, at: int) -> bool:
    """Whether "i" is spoken of as a letter, or numbers a list."""
    quoted = text[at - 1 : at] in tuple("\"'“‘") and text[at + 1 : at + 2] in tuple("\"'”’")
    return quoted or _LETTER_BEFORE.search(text, max(0, at - 12), at) is not None


def _among_english(text: str, at: int, english: English) -> bool:
    """Whether the words on both sides are English: other languages have their own "i"."""
    words = dictionary(english)
    before = _WORD_BEFORE.search(text[max(0, at - 30) : at])
    after = _WORD_AFTER.match(text, at + 1)
    return all(words.knows(m.group(1)) for m in (before, after) if m is not None)
