"""Refrains: lines that come again, and the one that comes again with a word different.

A line that stands twice or more in the same words is a refrain. A line of the same words but one is
odd, if it stands alone: where many lines differ in the same place (The wheels on the bus, The wipers
on the bus) they are verses of a song and meant to.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Mapping, Sequence

from proofkit.book import Span
from proofkit.reading.verse.layout import Set
from proofkit.reading.verse.poem import OddRefrain

_FEWEST_WORDS = 4
_WORD = re.compile(r"[^\W_]+(?:['’\-][^\W_]+)*")
Words = tuple[str, ...]


def odd_refrains(lines: Sequence[Set]) -> tuple[OddRefrain, ...]:
    """Each lone line that differs from a refrain by one word."""
    places: dict[Words, list[Set]] = defaultdict(list)
    for line in lines:
        places[_words(line.text)].append(line)
    refrains = [
        words for words, own in places.items() if len(own) > 1 and len(words) >= _FEWEST_WORDS
    ]
    found = [odd for refrain in refrains for odd in _odd(refrain, places)]
    return tuple(sorted(found, key=lambda odd: odd.span))


def _odd(refrain: Words, places: Mapping[Words, Sequence[Set]]) -> list[OddRefrain]:
    near = [(words, _difference(words, refrain)) for words in places if words != refrain]
    variants = [(words, differs) for words, differs in near if differs]
    # Two variants of one refrain are no slip: the song goes on that way.
    if len(variants) != 1 or len(places[variants[0][0]]) > 1:
        return []
    words, differs = variants[0]
    at, here, there = differs
    line = places[words][0]
    usual = places[refrain]
    return [
        OddRefrain(
            span=_span_of_word(line, at) if here else line.span,
            word=here,
            usual=usual[0].text,
            instead=there,
            places=tuple(other.span for other in usual),
        )
    ]


def _words(text: str) -> Words:
    return tuple(word.lower().replace("’", "'") for word in _WORD.findall(text))


def _difference(one: Words, other: Words) -> tuple[int, str, str] | None:
    """The place, the word here and the word there, where just one word differs; "" for none."""
    start = 0
    while start < min(len(one), len(other)) and one[start] == other[start]:
        start += 1
    here, there = one[start:], other[start:]
    if len(one) == len(other) and here[1:] == there[1:]:
        return start, here[0], there[0]
    if len(one) == len(other) + 1 and here[1:] == there:
        return start, here[0], ""
    if len(one) + 1 == len(other) and here == there[1:]:
        return start, "", there[0]
    return None


def _span_of_word(line: Set, at: int) -> Span:
    match = list(_WORD.finditer(line.text))[at]
    start = line.span.start
    return Span(page=line.span.page, start=start + match.start(), end=start + match.end())
