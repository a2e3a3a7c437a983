"""Sounds that no list has: a rare word that is a sentence of its own, wherever it stands."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator, Mapping, Set

from proofkit.book import Page, Span
from proofkit.stylesheet.ground import Ground
from proofkit.words.frequency import zipf
from proofkit.words.vocabulary import WORD

# Rarer than words that are said alone as exclamations: "Splendid!" has 4, "Whiffle" 1 and a half.
_RARE = 2.5
_ORDINARY = 3.5  # words that join to make other words: fifty, one
_PIECE = re.compile(r"[^.!?…,;:—–\n“”\"]+")
# From a sentence's beginning, or a speech's, to a mark that a sound is cried or fades away with.
_CRY = re.compile(r"(?:(?<=[.!?…“\"\n])|\A)[^.!?…“”\"\n]+(?=[!…])")


def own_sounds(ground: Ground, taken: Set[Span]) -> Mapping[str, tuple[Span, ...]]:
    """Each such word as the book spells it, in lower case, with its places; ``taken`` are left out.

    Names can be cried too, and so can words: rare words that are neither remain.
    """
    places: dict[str, list[Span]] = defaultdict(list)
    for page in ground.book.pages:
        for word, span in cried(page):
            places[word].append(span)
    return {
        word: tuple(spans)
        for word, spans in places.items()
        if len(spans) == ground.analysis.vocabulary.count(word)
        and _may_be_sound(ground, word)
        and not set(spans) & taken
        and not any(ground.issue_at(span, ("spelling",)) for span in spans)
    }


def alone(page: Page) -> Iterator[tuple[str, Span]]:
    """The words that are all there is between two marks, once or several times over: tap, tap, tap."""
    for piece in _PIECE.finditer(page.prose):
        yield from _one_word(page, *piece.span())


def cried(page: Page) -> Iterator[tuple[str, Span]]:
    """The words that are a sentence of their own, once or several times over, cried or fading away."""
    for cry in _CRY.finditer(page.prose):
        yield from _one_word(page, *cry.span())


def _one_word(page: Page, start: int, end: int) -> Iterator[tuple[str, Span]]:
    """Every place of the word that is the only one there; nothing where there are several."""
    words = list(WORD.finditer(page.prose, start, end))
    if len({word.group().lower() for word in words}) == 1:
        yield from ((word.group().lower(), page.span(*word.span())) for word in words)


def _may_be_sound(ground: Ground, word: str) -> bool:
    """Whether it is rare, no name, no short form (pepper's), no number in words (fifty-two)."""
    parts = re.split("[-‑]", word)
    ordinary = len(set(parts)) > 1 and all(zipf(part) > _ORDINARY for part in parts)
    return (
        zipf(word) < _RARE
        and not ordinary
        and not set("'’") & set(word)
        and not ground.analysis.vocabulary.is_name(word)
    )
