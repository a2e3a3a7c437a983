"""The likely sounds of a word that no list has, from its letters: names, inventions, noises.

At each place the longest spelling that is listed counts; a vowel before one consonant and a final e is
long (name, bike). The stress falls on the first syllable, but on the last where the word ends in a
heavy syllable that draws it (-oo, -ee, -een, -ette), and never on one of these beginnings: a-, be-, re-.
It is a guess, and whoever asks is told so.
"""

from __future__ import annotations

import re

Sounds = tuple[str, ...]

# Vowels are written without stress; "*" stands for the weak vowel.
_SPELLINGS: dict[str, str] = {
    "tch": "CH", "dge": "JH", "igh": "AY", "eigh": "EY", "augh": "AO", "ough": "OW", "tion": "SH * N",
    "sion": "ZH * N", "ture": "CH ER", "ck": "K", "ch": "CH", "sh": "SH", "th": "TH", "ph": "F", "wh": "W",
    "gh": "G", "tz": "T S", "ng": "NG", "nk": "NG K", "qu": "K W", "kn": "N", "wr": "R", "gn": "N", "mb": "M",
    "ll": "L", "ss": "S", "ff": "F", "zz": "Z", "bb": "B", "dd": "D", "gg": "G", "mm": "M", "nn": "N",
    "pp": "P", "rr": "R", "tt": "T", "cc": "K", "air": "EH R", "are": "EH R", "ear": "IH R", "eer": "IH R",
    "ore": "AO R", "oor": "AO R", "our": "AO R", "oar": "AO R", "ire": "AY ER", "ure": "Y UH R",
    "ar": "AA R", "er": "ER", "ir": "ER", "or": "AO R", "ur": "ER", "ai": "EY", "ay": "EY", "ei": "EY",
    "ey": "IY", "ee": "IY", "ea": "IY", "ie": "IY", "oa": "OW", "oe": "OW", "ow": "OW", "ou": "AW",
    "oo": "UW", "oi": "OY", "oy": "OY", "au": "AO", "aw": "AO", "ew": "UW", "ue": "UW", "ui": "UW",
    "all": "AO L", "alk": "AO K", "old": "OW L D", "ind": "AY N D", "aa": "AA", "ah": "AA", "oh": "OW",
    "a": "AE", "e": "EH", "i": "IH", "o": "AA", "u": "AH", "b": "B", "c": "K", "d": "D", "f": "F",
    "g": "G", "h": "HH", "j": "JH", "k": "K", "l": "L", "m": "M", "n": "N", "p": "P", "q": "K", "r": "R",
    "s": "S", "t": "T", "v": "V", "w": "W", "x": "K S", "y": "IY", "z": "Z",
}  # fmt: skip
_LONG = {"a": "EY", "e": "IY", "i": "AY", "o": "OW", "u": "UW", "y": "AY"}
_LONGEST = 4
_MAGIC_E = re.compile(r"[aeiouy][bcdfgklmnpstvz]e(?:s|d)?$")
_SOFT = re.compile(r"[cg](?=[eiy])")
_DRAWS = re.compile(r"(?:oo|ee|een|ette|eer|ier|oon|ique|aroo)s?$")
_UNSTRESSED_BEGINNING = re.compile(r"(?:a|be|re|de|un)[bcdfghjklmnpqrstvwxyz]{1,2}[aeiouy]")
_FINAL_VOWELS = {"a": "*", "o": "OW", "e": "IY", "y": "IY"}


def by_letters(word: str) -> Sounds:
    """The likely sounds of a word in lower case; at least one of them is a vowel."""
    letters = word.replace("'", "")
    names: list[str] = []
    at = 0
    while at < len(letters):
        spelling, sounds = _at(letters, at)
        names += sounds.split()
        at += len(spelling)
    if not any(_is_vowel(name) for name in names):
        names.append("*")  # pfft, brrm: spoken in one beat all the same
    return _stressed(letters, names)


def _at(letters: str, at: int) -> tuple[str, str]:
    """The spelling that starts here, and its sounds."""
    before, rest = letters[:at], letters[at:]
    ending = _ending(before, rest)
    if ending is not None:
        return rest, ending
    if _SOFT.match(rest):
        return rest[0], "S" if rest[0] == "c" else "JH"
    if not before and rest[0] == "y" and rest[1:2] in tuple("aeiou"):
        return "y", "Y"
    for length in range(min(_LONGEST, len(rest)), 0, -1):
        if rest[:length] in _SPELLINGS:
            return rest[:length], _SPELLINGS[rest[:length]]
    return rest[0], ""


def _ending(before: str, rest: str) -> str | None:
    """The sounds of the rest of the word, if it is one of the endings that sound as no rule tells."""
    has_vowel = any(letter in "aeiouy" for letter in before)
    if _MAGIC_E.fullmatch(rest) and before[-1:] not in tuple("aeiou"):
        soft = {"c": "S", "g": "JH"}.get(rest[1], _SPELLINGS[rest[1]])
        return f"{_LONG[rest[0]]} {soft} {rest[3:].upper()}".strip()
    if before and rest in ("le", "les"):
        return "* L Z" if rest == "les" else "* L"
    if rest == "e" and has_vowel:
        return ""
    if rest in _FINAL_VOWELS:
        return _FINAL_VOWELS[rest] if has_vowel else _LONG.get(rest, "AA")
    return None


def _is_vowel(name: str) -> bool:
    return name[0] in "AEIOU*"


def _stressed(letters: str, names: list[str]) -> Sounds:
    vowels = [at for at, name in enumerate(names) if _is_vowel(name)]
    stressed = vowels[0]
    if len(vowels) > 1 and _DRAWS.search(letters):
        stressed = vowels[-1]
    elif len(vowels) > 1 and _UNSTRESSED_BEGINNING.match(letters):
        stressed = vowels[1]
    sounds = []
    for at, name in enumerate(names):
        plain = "AH" if name == "*" else name
        sounds.append(f"{plain}{1 if at == stressed else 0}" if _is_vowel(name) else plain)
    return tuple(sounds)
