"""Two drafts as they are printed, word by word with their marks, and which is which of the other."""

from __future__ import annotations

import re
from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from dataclasses import dataclass, field

from proofkit.drafts.alignment import NOWHERE, linked, words_of

_TOKEN = re.compile(r"\S+")


@dataclass(eq=False, slots=True, kw_only=True)
class Token:
    """A word with the marks on it, or marks alone, on the page at place ``page``.

    ``partner`` is what it was in the other draft, or became there.
    """

    text: str
    page: int
    partner: Token | None = field(default=None, repr=False)


@dataclass(frozen=True, slots=True, kw_only=True)
class Tokens:
    """The tokens of a draft, page by page."""

    pages: tuple[tuple[Token, ...], ...]

    def page(self, place: int) -> tuple[Token, ...]:
        """Those of the page at 1-based ``place``."""
        return self.pages[place - 1]


def tokens_of(was: Sequence[str], now: Sequence[str]) -> tuple[Tokens, Tokens]:
    """The tokens of two drafts, given by their pages' texts; each has one partner at most."""
    old_words, new_words = words_of(was), words_of(now)
    old, old_starts = _tokens(was)
    new, new_starts = _tokens(now)
    for word, link in enumerate(linked(old_words, new_words)):
        if link == NOWHERE:
            continue
        one = _owner(old, old_starts, old_words.starts[word])
        other = _owner(new, new_starts, new_words.starts[link])
        if one.partner is None and other.partner is None:
            one.partner, other.partner = other, one
    return old, new


def _tokens(pages: Sequence[str]) -> tuple[Tokens, Sequence[Sequence[int]]]:
    """The tokens, and for each page where they start."""
    every, starts = [], []
    for number, text in enumerate(pages, 1):
        found = list(_TOKEN.finditer(text))
        every.append(tuple(Token(text=each.group(), page=number) for each in found))
        starts.append([each.start() for each in found])
    return Tokens(pages=tuple(every)), starts


def _owner(tokens: Tokens, starts: Sequence[Sequence[int]], word: tuple[int, int]) -> Token:
    """The token that a word is part of, given the word's page and its first character."""
    page, start = word
    return tokens.page(page)[bisect_right(starts[page - 1], start) - 1]


def longest_rise(numbers: Sequence[int]) -> set[int]:
    """The places of the most numbers that rise from one to the next (patience sorting)."""
    tops: list[int] = []
    places: list[int] = []
    before: list[int | None] = []
    for at, number in enumerate(numbers):
        pile = bisect_left(tops, number)
        before.append(places[pile - 1] if pile else None)
        tops[pile : pile + 1] = [number]
        places[pile : pile + 1] = [at]
    rise = set()
    at_last = places[-1] if places else None
    while at_last is not None:
        rise.add(at_last)
        at_last = before[at_last]
    return rise
