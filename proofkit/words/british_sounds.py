"""American sounds turned into British ones: the speech of southern England, as dictionaries give it.

The rules, after J. C. Wells, Accents of English, 1982, chapters 2 and 4, whose names for sets of words
these are:

- r is silent but before a vowel: car, water, fire; near, square and cure keep a vowel of their own
  (IA, EA, UA); poor and sure may also rhyme with paw.
- LOT has a vowel of its own (OH), apart from PALM and START (AA): told from the spelling, an o, or an a
  after w or qu.
- CLOTH (off, dog, long) goes with LOT and not with THOUGHT: told from the spelling.
- BATH (grass, dance, laugh) has AA, as listed in ``pronunciations-more.txt`` by the beginning of the word.
- before r and a vowel: carry has AE, merry EH, fairy EA; mirror IH, weary IA; hurry AH, furry ER.

What no rule gives (scone, vase, tomato) is listed in ``pronunciations-more.txt``.
"""

from __future__ import annotations

import re
from functools import cache

from proofkit.words.data import wordlist

Sounds = tuple[str, ...]

_LETTERS = re.compile(r"[aeiou]+|(?<=[^aeiou])y|^y(?=[^aeiou])")


def british(word: str, american: tuple[Sounds, ...]) -> tuple[Sounds, ...]:
    """The British ways of saying a word, given the American ones."""
    ways: list[Sounds] = []
    for sounds in american:
        ways += _ways(word, sounds)
    return tuple(dict.fromkeys(ways))


def _ways(word: str, american: Sounds) -> list[Sounds]:
    sounds, settled = _replaced(word, american)
    places = _spelt(word, sum(_is_vowel(sound) for sound in sounds))
    spoken: list[str] = []
    vowels = 0
    for at, sound in enumerate(sounds):
        if _is_vowel(sound):
            spoken += [sound] if at == settled else _vowel(sounds, at, places[vowels])
            vowels += 1
        elif sound != "R" or _vowel_after(sounds, at):
            spoken.append(sound)
        elif sounds[at - 1].startswith(("AW", "AY")):
            spoken.append("AH0")  # hour, fire: one syllable or two, but the r is gone
    way = tuple(spoken)
    if any(sound.startswith("UA") for sound in way):
        return [way, tuple(sound.replace("UA", "AO") for sound in way)]
    return [way]


def _vowel(sounds: Sounds, at: int, spelt: str) -> list[str]:
    """The British sound of a vowel; ``spelt`` is its word up to and with its letters, a bar, and the rest."""
    name, digit = sounds[at][:-1], sounds[at][-1]
    if name == "ER":
        new = ("AH" if digit == "0" else "ER") + digit
        return [new, "R"] if _vowel_after(sounds, at) else [new]
    after_r = sounds[at + 1 : at + 2] == ("R",)
    r_stays = after_r and _vowel_after(sounds, at + 1)
    if after_r and name in ("IH", "EH", "UH", "IY", "UW"):
        return [_before_r(name, spelt, stays=r_stays) + digit]
    if r_stays and name in ("AO", "AA"):
        return [("OH" if _is_short_o(spelt) else name) + digit]
    if name in ("AA", "AO") and not after_r:
        return [_open_back(name, spelt) + digit]
    return [name + digit]


def _before_r(name: str, spelt: str, *, stays: bool) -> str:
    letters, rest = spelt.split("|")
    if name in ("UH", "UW"):
        return "UA"
    if name in ("IH", "IY"):
        return "IH" if stays and re.search(r"[^aeiou][iy]$", letters) else "IA"
    if stays and re.search(r"[^aeiou]a$", letters) and rest.startswith("rr"):
        return "AE"
    if stays and re.search(r"(?:^|[^aeiou])e$", letters):
        return "EH"
    return "EA"


def _is_short_o(spelt: str) -> bool:
    letters, rest = spelt.split("|")
    return bool(re.search(r"(?:[^aeiou]|^)o$|(?:w|qu)a$", letters)) and rest.startswith("rr")


def _open_back(name: str, spelt: str) -> str:
    """LOT, THOUGHT or PALM, by the letters."""
    letters, rest = spelt.split("|")
    group = re.search(r"[aeiouy]*$", letters)
    vowels = group.group() if group else ""
    if vowels == "o" or (vowels == "ou" and rest in ("gh", "ghs")):
        return "OH"  # hot, dog; cough, but not bought
    if vowels.endswith("a") and re.search(r"(?:w|wh|qu)a$", letters):
        return "AO" if rest.startswith(("l", "t", "w", "r")) and not rest.startswith("ll") else "OH"
    if vowels in ("a", "ah", "") and name == "AA":
        return "AA" if not rest.startswith(("w", "u", "lk")) else "AO"
    return "AO" if vowels != "ea" else "AA"


def _vowel_after(sounds: Sounds, at: int) -> bool:
    return at + 1 < len(sounds) and _is_vowel(sounds[at + 1])


def _spelt(word: str, vowels: int) -> list[str]:
    """For each vowel sound, the word parted by a bar after the letters that spell it, as far as one can tell."""
    ends = [match.end() for match in _LETTERS.finditer(word)]
    if len(ends) > vowels and word.endswith(("e", "es", "ed")):
        ends = ends[:vowels]
    while len(ends) < vowels:
        ends.append(ends[-1] if ends else len(word))
    return [f"{word[:end]}|{word[end:]}" for end in ends[:vowels]]


def _replaced(word: str, sounds: Sounds) -> tuple[Sounds, int]:
    """The sounds with the word's own change made, if its beginning is listed with one, and its place or -1."""
    for length in range(len(word), 1, -1):
        change = _changes().get(word[:length])
        if change:
            return _with_change(sounds, *change)
    return sounds, -1


def _with_change(sounds: Sounds, old: str, new: str) -> tuple[Sounds, int]:
    for at, sound in enumerate(sounds):
        if sound in (f"{old}1", f"{old}2"):
            vowel, *rest = new.split("+")  # "AH+R" of hurry
            return (*sounds[:at], vowel + sound[-1], *rest, *sounds[at + 1 :]), at
    return sounds, -1


def _is_vowel(sound: str) -> bool:
    return sound[-1].isdigit()


@cache
def _changes() -> dict[str, tuple[str, str]]:
    """Beginnings of words with the vowel that changes and what it becomes: "bath" AE AA."""
    changes = {}
    for line in wordlist("pronunciations-more.txt").read_text(encoding="utf-8").splitlines():
        kind, _, rest = line.partition(" ")
        if kind == "stems":
            old, new, *stems = rest.split(" ")
            changes.update(dict.fromkeys(stems, (old, new)))
    return changes
