"""Sounds that no list has: a rare word that stands alone in its sentence, wherever it stands."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Mapping, Set

from proofkit.book import Page, Span
from proofkit.stylesheet.ground import Ground
from proofkit.words.frequency import zipf
from proofkit.words.vocabulary import WORD

# Rarer than words that are said alone as exclamations: "Splendid!" has 4, "Whiffle" 1 and a half.
_RARE = 2.5
_PIECE = re.compile(r"[^.!?…,;:—–\n“”\"]+")


def own_sounds(ground: Ground, taken: Set[Span]) -> Mapping[str, tuple[Span, ...]]:
    """Each such word as the book spells it, in lower case, with its places; ``taken`` are left out.

    Names can stand alone too, and so can words that are shouted: rare words that are neither remain.
    """
    places: dict[str, list[Span]] = defaultdict(list)
    for page in ground.book.pages:
        for word, span in alone(page):
            places[word].append(span)
    vocabulary = ground.analysis.vocabulary
    return {
        word: tuple(spans)
        for word, spans in places.items()
        if len(spans) == vocabulary.count(word)
        and zipf(word) < _RARE
        and not vocabulary.is_name(word)
        and not set(spans) & taken
        and not any(ground.issue_at(span, ("spelling",)) for span in spans)
    }


def alone(page: Page) -> list[tuple[str, Span]]:
    """The words that are all there is between two marks, once or several times over: Tirra, tirra tirra."""
    found = []
    for piece in _PIECE.finditer(page.prose):
        words = list(WORD.finditer(page.prose, *piece.span()))
        if words and len({word.group().lower() for word in words}) == 1:
            found += [(word.group().lower(), page.span(*word.span())) for word in words]
    return found
