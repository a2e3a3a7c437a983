"""How words sound, in British or in American English.

Sounds are written as the CMU Pronouncing Dictionary writes them: ``N EY1 CH ER0``, every vowel with its
stress (1 primary, 2 secondary, 0 none). A word that the dictionary lacks is tried, in this order,

1. in our own short list of British, nursery and poetic words (``pronunciations-more.txt``);
2. with its drawn-out letters shortened, its g given back (runnin'), its ending taken off, or as two
   words written as one;
3. by its letters (``words/letter_sounds.py``): then it is ``guessed``, and its stress is anybody's.

British sound is worked out from the American one by ``words/british_sounds.py``, which adds four vowels:
OH (hot), IA (near), EA (square) and UA (cure).
"""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache, lru_cache
from unicodedata import normalize

from proofkit.settings import English
from proofkit.words.british_sounds import british
from proofkit.words.data import wordlist
from proofkit.words.letter_sounds import by_letters

Sounds = tuple[str, ...]

_HEAD_OF_SOUNDS = "# Sounds, from the character 0 on: "
_PLAIN = re.compile(r"[^a-z']")
_DRAWN_OUT = re.compile(r"(.)\1{2,}")
_VOICELESS = frozenset("P T K F TH".split())
_HISSES = frozenset("S Z SH ZH CH JH".split())
_ENDINGS: dict[str, Sounds] = {
    "ing": ("IH0", "NG"), "in'": ("IH0", "N"), "er": ("ER0",), "ers": ("ER0", "Z"), "est": ("AH0", "S", "T"),
    "y": ("IY0",), "ly": ("L", "IY0"), "less": ("L", "AH0", "S"), "ness": ("N", "AH0", "S"),
    "ful": ("F", "AH0", "L"), "some": ("S", "AH0", "M"), "ish": ("IH0", "SH"), "'ll": ("AH0", "L"),
    "'ve": ("AH0", "V"), "'re": ("ER0",), "'d": ("D",), "th": ("TH",),
}  # fmt: skip
_SHORTEST_HALF = 3
_LONG_TAIL = 5


@dataclass(frozen=True, slots=True, kw_only=True)
class Spoken:
    """A word's pronunciations, the usual one first; ``guessed`` where they were made from its letters."""

    ways: tuple[Sounds, ...]
    guessed: bool = False


@lru_cache(maxsize=20_000)
def spoken_as(word: str, english: English) -> Spoken:
    """How a word sounds; no ways at all where it has no letter from a to z.

    ``word`` may have capitals, an apostrophe of any shape and a possessive 's, but no hyphen.
    """
    plain = _PLAIN.sub("", normalize("NFKD", word).lower().replace("’", "'").replace("‘", "'"))
    bare = plain.strip("'")
    if not bare:
        return Spoken(ways=())
    own = _own(plain, english) or _own(bare, english)
    if own:
        return Spoken(ways=own)
    american = listed(plain) or listed(bare) or _made(plain)
    if american:
        ways = american if english is English.AMERICAN else british(bare, american)
        return Spoken(ways=tuple(dict.fromkeys(ways)))
    guess = _guessed(bare)
    ways = (guess,) if english is English.AMERICAN else british(bare, (guess,))
    return Spoken(ways=ways, guessed=True)


def pronunciations(word: str, english: English) -> tuple[Sounds, ...]:
    """Every way of saying a word, the usual one first."""
    return spoken_as(word, english).ways


def stress(sounds: Sounds) -> str:
    """The stress of each syllable: "102" for "butterfly"."""
    return "".join(sound[-1] for sound in sounds if is_vowel(sound))


def is_vowel(sound: str) -> bool:
    """Whether a sound makes a syllable: vowels bear a stress digit."""
    return sound[-1].isdigit()


def listed(word: str) -> tuple[Sounds, ...]:
    """The American pronunciations that CMUdict gives a plain word in lower case; none if it lacks it."""
    lines, sounds = _table()
    at = bisect_left(lines, f"{word} ")
    if at < len(lines):
        found, *ways = lines[at].split(" ")
        if found == word:
            return tuple(tuple(sounds[ord(code) - ord("0")] for code in way) for way in ways)
    return ()


@cache
def _table() -> tuple[list[str], list[str]]:
    # Lines searched by halving are ready in a few milliseconds; a dict of them takes ten times as long.
    text = wordlist("pronunciations.txt").read_text(encoding="utf-8")
    head, _, rest = text.partition(_HEAD_OF_SOUNDS)
    sounds, _, table = rest.partition("\n")
    assert head.startswith("#")  # noqa: S101 - the table is ours; a broken one must not pass for silence
    return table.rstrip("\n").split("\n"), sounds.split(" ")


@cache
def _more() -> dict[tuple[str, str], tuple[Sounds, ...]]:
    """Our own words: by the English that they are for ("" is both) and the word."""
    entries: dict[tuple[str, str], tuple[Sounds, ...]] = {}
    for line in wordlist("pronunciations-more.txt").read_text(encoding="utf-8").splitlines():
        if line and not line.startswith("#"):
            english, word, *sounds = line.split(" ")
            key = ("" if english == "both" else english, word)
            entries[key] = (*entries.get(key, ()), tuple(sounds))
    return entries


def _own(word: str, english: English) -> tuple[Sounds, ...]:
    own = _more().get((english.value, word))
    if own:
        return own
    shared = _more().get(("", word), ())
    return shared if english is English.AMERICAN else british(word, shared)


def _made(word: str) -> tuple[Sounds, ...]:
    """The American sounds of a word made from words that are known."""
    for attempt in (_shortened, _with_s, _with_past, _with_ending, _compound):
        ways = attempt(word)
        if ways:
            return ways
    return ()


def _known(word: str) -> tuple[Sounds, ...]:
    return _more().get(("", word)) or listed(word)


def _guessed(word: str) -> Sounds:
    """By the letters; of a plural or a past, the word's own letters, and then the ending by rule."""
    if re.search(r"[^s']'?s$", word) and not _known(word[-_LONG_TAIL:]) and len(word) > 3:
        stem = f"{word[:-3]}y" if word.endswith("ies") else word.rstrip("s").rstrip("'")
        sounds = by_letters(stem)
        return sounds + _plural(sounds[-1])
    if word.endswith("ed") and len(word) > 4:
        sounds = by_letters(word[:-1] if word[-4] in "aeiou" else word[:-2])
        return sounds + _past(sounds[-1])
    for at in range(2, len(word) - _LONG_TAIL + 1):
        tail = _known(word[at:])
        if tail:  # gillyflower: whatever it begins with, it ends as flower does
            return (*by_letters(word[:at]), *(sound.replace("1", "2") for sound in tail[0]))
    return by_letters(word)


def _shortened(word: str) -> tuple[Sounds, ...]:
    if not _DRAWN_OUT.search(word):
        return ()
    twice, once = _DRAWN_OUT.sub(r"\1\1", word), _DRAWN_OUT.sub(r"\1", word)
    return _known(once) or _known(twice)


def _with_s(word: str) -> tuple[Sounds, ...]:
    for ending in ("'s", "s'", "s", "es"):
        stem = word.removesuffix(ending)
        if stem != word and not stem.endswith("s"):
            ways = _known(stem) or (_known(f"{stem[:-1]}y") if stem.endswith("ie") else ())
            if ways:
                return tuple(way + _plural(way[-1]) for way in ways)
    return ()


def _plural(last: str) -> Sounds:
    if last in _HISSES:
        return ("IH0", "Z")
    return ("S",) if last in _VOICELESS else ("Z",)


def _with_past(word: str) -> tuple[Sounds, ...]:
    stem = word.removesuffix("ed")
    if stem == word:
        return ()
    for base in _bases(stem):
        ways = _known(base)
        if ways:
            return tuple(way + _past(way[-1]) for way in ways)
    return ()


def _past(last: str) -> Sounds:
    if last in ("T", "D"):
        return ("IH0", "D")
    return ("T",) if last in _VOICELESS | {"S", "SH", "CH"} else ("D",)


def _with_ending(word: str) -> tuple[Sounds, ...]:
    for ending, sounds in _ENDINGS.items():
        stem = word.removesuffix(ending)
        if stem != word and len(stem) > 2:
            for base in _bases(stem):
                ways = _known(base)
                if ways:
                    return tuple(way + sounds for way in ways)
    return ()


def _bases(stem: str) -> Iterator[str]:
    yield stem
    yield f"{stem}e"
    if len(stem) > 2 and stem[-1] == stem[-2]:
        yield stem[:-1]
    if stem.endswith("i"):
        yield f"{stem[:-1]}y"


def _compound(word: str) -> tuple[Sounds, ...]:
    """Two words as one: the first bears the stress, as in bedtime and moonbeam."""
    for at in range(len(word) - _SHORTEST_HALF, _SHORTEST_HALF - 1, -1):
        first, second = _known(word[:at]), _known(word[at:])
        if first and second:
            return (first[0] + tuple(sound.replace("1", "2") for sound in second[0]),)
    return ()
