"""Do two words rhyme?

Perfect: all sounds from the last vowel of primary stress on are the same, and what stands before it
differs (bright, night). A last syllable of secondary stress rhymes with one of primary stress
(butterfly, sky), never two of them with one another: tomato and veto do not rhyme.

Near: the same stressed vowel before other consonants (time, mine); vowels next to one another before
the same consonants (gone, bone); an unstressed last syllable with a stressed one (merrily, tree).

Eye: the same letters from the last vowel on, and other sounds (love, move); and the y of symmetry with
eye, as the older poets rhyme it.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache
from itertools import product

from proofkit.reading.verse.poem import RhymeKind
from proofkit.settings import English
from proofkit.words.pronunciations import Sounds, is_vowel, pronunciations

_LETTERS = re.compile(r"[aeiouy]+[^aeiouy]*(?:e|es|ed)?$")
_NEIGHBOURS = (
    {"IH", "IY"}, {"UH", "UW"}, {"AH", "OH"}, {"AH", "AA"}, {"AH", "UH"}, {"OH", "AO"}, {"AA", "AO"},
    {"EH", "AE"}, {"EH", "IH"}, {"OW", "AO"}, {"OW", "OH"}, {"EY", "EH"}, {"AA", "AE"}, {"ER", "AH"},
    {"IA", "EA"}, {"ER", "EA"}, {"UA", "AO"}, {"AH", "OW"}, {"UW", "OW"},
)  # fmt: skip
_LIGHT = ("IY", "OW", "UW", "EY", "AY", "IH", "AH")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Tail:
    """A word's end from a vowel on: its consonants before, its vowel, the rest without stress."""

    onset: Sounds
    vowel: str
    rest: Sounds


def rhyme(first: str, second: str, english: English) -> RhymeKind:
    """How two words rhyme, at best, in any of their pronunciations."""
    return rhyme_of_ends((first,), (second,), english)


def rhyme_of_ends(first: tuple[str, ...], second: tuple[str, ...], english: English) -> RhymeKind:
    """The same for the last two words of two lines: "found it" and "round it" rhyme in both."""
    kind = _of_words(first[-1].lower(), second[-1].lower(), english)
    if kind is RhymeKind.PERFECT or len(first) < 2 or len(second) < 2:
        return kind
    if first[-1].lower() == second[-1].lower():
        before = _of_words(first[-2].lower(), second[-2].lower(), english)
        return RhymeKind.PERFECT if before is RhymeKind.PERFECT else kind
    return kind


@lru_cache(maxsize=50_000)
def _of_words(first: str, second: str, english: English) -> RhymeKind:
    if first == second:
        return RhymeKind.IDENTICAL
    ways = list(product(pronunciations(first, english), pronunciations(second, english)))
    kinds = {_of_sounds(one, other) for one, other in ways}
    for kind in (RhymeKind.PERFECT, RhymeKind.IDENTICAL):
        if kind in kinds:
            return kind
    if _look_alike(first, second):
        return RhymeKind.EYE
    return RhymeKind.NEAR if RhymeKind.NEAR in kinds else RhymeKind.NONE


def _of_sounds(one: Sounds, other: Sounds) -> RhymeKind:
    first, second = _primary(one), _primary(other)
    if first is None or second is None:
        return RhymeKind.NONE
    if _same(first, second):
        return RhymeKind.IDENTICAL if first.onset == second.onset else RhymeKind.PERFECT
    for main, ending in ((first, _last(other, "2")), (second, _last(one, "2"))):
        if ending and _same(main, ending):
            return RhymeKind.PERFECT
    for main, ending in ((first, _last(other, "0")), (second, _last(one, "0"))):
        if ending and ending.vowel in _LIGHT and _same(main, ending):
            return RhymeKind.NEAR
    return RhymeKind.NEAR if _nearly(first, second) else RhymeKind.NONE


def _same(first: _Tail, second: _Tail) -> bool:
    return (first.vowel, first.rest) == (second.vowel, second.rest)


def _nearly(first: _Tail, second: _Tail) -> bool:
    """The same vowel before other consonants; or vowels nearly the same before the same ones."""
    if _beats(first.rest) != _beats(second.rest):
        return False
    if first.vowel == second.vowel:
        # A long vowel at the very end (tree) and one that is shut (sheep) are only half alike.
        return bool(first.rest) == bool(second.rest) or _but_for_s(first.rest, second.rest)
    return (
        bool(first.rest)
        and first.rest == second.rest
        and {first.vowel, second.vowel} in _NEIGHBOURS
    )


def _but_for_s(first: Sounds, second: Sounds) -> bool:
    return (first or second) in (("S",), ("Z",), ("D",))


def _beats(sounds: Sounds) -> int:
    return sum(sound[0] in "AEIOU" for sound in sounds)


def _primary(sounds: Sounds) -> _Tail | None:
    vowels = [at for at, sound in enumerate(sounds) if is_vowel(sound)]
    stressed = [at for at in vowels if sounds[at].endswith("1")] or vowels[-1:]
    return _tail(sounds, stressed[-1]) if stressed else None


def _last(sounds: Sounds, digit: str) -> _Tail | None:
    """The last syllable, if it bears that stress."""
    vowels = [at for at, sound in enumerate(sounds) if is_vowel(sound)]
    if len(vowels) < 2 or not sounds[vowels[-1]].endswith(digit):
        return None
    return _tail(sounds, vowels[-1])


def _tail(sounds: Sounds, at: int) -> _Tail:
    start = at
    while start and not is_vowel(sounds[start - 1]):
        start -= 1
    return _Tail(
        onset=sounds[start:at],
        vowel=sounds[at][:-1],
        rest=tuple(sound.rstrip("012") for sound in sounds[at + 1 :]),
    )


def _look_alike(first: str, second: str) -> bool:
    one, other = _LETTERS.search(first), _LETTERS.search(second)
    if one is None or other is None:
        return False
    if one.group() == other.group() and len(one.group()) > 1:
        return True
    return {first[-1], second[-3:]} == {"y", "eye"} or {second[-1], first[-3:]} == {"y", "eye"}
