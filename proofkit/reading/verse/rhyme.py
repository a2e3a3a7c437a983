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
from proofkit.words.lists import word_set
from proofkit.words.pronunciations import Sounds, is_vowel, pronunciations, stress

_LETTERS = re.compile(r"[aeiouy]+[^aeiouy]*(?:e|es|ed)?$")
_LETTERS_OF_TWO = re.compile(r"[aeiouy]+[^aeiouy]+[aeiouy]+[^aeiouy]*$")
_NEIGHBOURS = (
    {"IH", "IY"}, {"UH", "UW"}, {"AH", "OH"}, {"AH", "UH"}, {"OH", "AO"}, {"AA", "AO"}, {"EH", "AE"},
    {"EH", "IH"}, {"OW", "AO"}, {"OW", "OH"}, {"EY", "EH"}, {"IY", "EH"}, {"IY", "EY"}, {"AA", "AE"}, {"AE", "EY"},
    {"IA", "EA"}, {"ER", "EA"}, {"UA", "AO"}, {"AH", "OW"},
)  # fmt: skip
_MANNER = {
    sound: kind
    for kind, sounds in {
        "p": "P T K", "B": "B D G", "s": "F TH S SH HH", "Z": "V DH Z ZH", "c": "CH", "J": "JH",
        "N": "M N NG", "L": "L R", "W": "W Y",
    }.items()
    for sound in sounds.split()
}  # fmt: skip
_BEST_FIRST = (RhymeKind.PERFECT, RhymeKind.IDENTICAL, RhymeKind.NEAR)
_WEAK = word_set("it me him her us them you is are am in on up of to be he she we they do not")
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
    joined = _of_ways(_joined(first, english), _joined(second, english))
    return RhymeKind.PERFECT if joined is RhymeKind.PERFECT else kind


def _joined(words: tuple[str, ...], english: English) -> tuple[Sounds, ...]:
    """The last word; or, where that may be weak, the last two as one: upon it (bonnet)."""
    own = pronunciations(words[-1], english)
    if words[-1].lower() not in _WEAK:
        return own
    before = pronunciations(words[-2], english)
    return tuple(
        (*one, *(sound.replace("1", "0") for sound in other)) for one, other in product(before, own)
    )


@lru_cache(maxsize=50_000)
def _of_words(first: str, second: str, english: English) -> RhymeKind:
    if first == second:
        return RhymeKind.IDENTICAL
    kind = _of_ways(pronunciations(first, english), pronunciations(second, english))
    if kind in (RhymeKind.NEAR, RhymeKind.NONE) and _look_alike(first, second):
        return RhymeKind.EYE
    return kind


def _of_ways(first: tuple[Sounds, ...], second: tuple[Sounds, ...]) -> RhymeKind:
    kinds = {_of_sounds(one, other) for one, other in product(first, second)}
    return next((kind for kind in _BEST_FIRST if kind in kinds), RhymeKind.NONE)


def _of_sounds(one: Sounds, other: Sounds) -> RhymeKind:
    first, second = _primary(one), _primary(other)
    if first is None or second is None:
        return RhymeKind.NONE
    if _same(first, second):
        return RhymeKind.IDENTICAL if first.onset == second.onset else RhymeKind.PERFECT
    for main, ending in ((first, _secondary(other)), (second, _secondary(one))):
        if ending and _same(main, ending):
            return RhymeKind.PERFECT
    for main, ending in ((first, _weak_end(other)), (second, _weak_end(one))):
        if ending and ending.vowel in _LIGHT and _same(main, ending):
            return RhymeKind.NEAR
    return RhymeKind.NEAR if _nearly(first, second) else RhymeKind.NONE


def _same(first: _Tail, second: _Tail) -> bool:
    return (first.vowel, first.rest) == (second.vowel, second.rest)


def _nearly(first: _Tail, second: _Tail) -> bool:
    """The same vowel before consonants of one kind; or vowels nearly the same before the same ones."""
    if first.vowel == second.vowel:
        return _of_a_kind(first.rest, second.rest)
    return (
        bool(first.rest)
        and first.rest == second.rest
        and {first.vowel, second.vowel} in _NEIGHBOURS
    )


def _of_a_kind(first: Sounds, second: Sounds) -> bool:
    """Consonants made in one manner each (time, mine; cup, cut), or one more at the end (town, ground)."""
    longer, shorter = sorted(map(_kinds, (first, second)), key=len, reverse=True)
    if len(longer) - len(shorter) > 1 or longer.count("V") != shorter.count("V"):
        return False
    return longer[: len(shorter)] == shorter and (
        len(longer) == len(shorter) or longer[-1] in "sZpB"
    )


def _kinds(sounds: Sounds) -> str:
    return "".join("V" if sound[0] in "AEIOU" else _MANNER[sound] for sound in sounds)


def _primary(sounds: Sounds) -> _Tail | None:
    vowels = [at for at, sound in enumerate(sounds) if is_vowel(sound)]
    stressed = [at for at in vowels if sounds[at].endswith("1")] or vowels[-1:]
    return _tail(sounds, stressed[-1]) if stressed else None


def _secondary(sounds: Sounds) -> _Tail | None:
    """From the last vowel of secondary stress on, if it comes after the primary: butterfly, gillyflower."""
    stressed = [at for at, sound in enumerate(sounds) if sound[-1] in "12"]
    if len(stressed) < 2 or not sounds[stressed[-1]].endswith("2"):
        return None
    return _tail(sounds, stressed[-1])


def _weak_end(sounds: Sounds) -> _Tail | None:
    """The last syllable, if it has no stress: merrily."""
    vowels = [at for at, sound in enumerate(sounds) if is_vowel(sound)]
    if len(vowels) < 2 or not sounds[vowels[-1]].endswith("0"):
        return None
    return _tail(sounds, vowels[-1])


def _tail(sounds: Sounds, at: int) -> _Tail:
    start = at
    while start and not is_vowel(sounds[start - 1]):
        start -= 1
    return _Tail(
        onset=sounds[start:at],
        vowel=sounds[at][:-1],
        # rabbit and habit, with either weak vowel
        rest=tuple("IH" if sound == "AH0" else sound.rstrip("012") for sound in sounds[at + 1 :]),
    )


def _look_alike(first: str, second: str) -> bool:
    """Whether the letters agree from the last stressed vowel on."""
    one, other = _letters(first), _letters(second)
    if one and one == other and (len(one) > 1 or one == "o"):
        return True
    return {first[-1], second[-3:]} == {"y", "eye"} or {second[-1], first[-3:]} == {"y", "eye"}


def _letters(word: str) -> str:
    match = _LETTERS_OF_TWO.search(word) if _ends_weakly(word) else _LETTERS.search(word)
    return match.group() if match else ""


def _ends_weakly(word: str) -> bool:
    return any(
        way[-1:] and stress(way)[-2:] == "10" for way in pronunciations(word, English.BRITISH)
    )
