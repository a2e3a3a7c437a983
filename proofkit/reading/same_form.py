"""A word put into the form that another stands in: *tire* as *wearied* stands gives *tired*.

Forms are asked for by the Penn Treebank tag. Where English has no such form in one word (the
comparative of *curious*), there is none.
"""

from __future__ import annotations

from collections.abc import Callable

from proofkit.words.forms import has_one_form, irregular_verbs, past_of, plural_of, third_person_of
from proofkit.words.frequency import zipf

_VOWELS = "aeiou"
_COMPARED = {
    "good": ("better", "best"),
    "bad": ("worse", "worst"),
    "far": ("further", "furthest"),
    "well": ("better", "best"),
    "ill": ("worse", "worst"),
    "little": ("less", "least"),
}
# Unheard of where English has the form at all: rarer words are not offered.
_SAID = 2.2
_PLAIN = frozenset({"NN", "JJ", "RB", "VB", "VBP"})


def in_form(plain: str, tag: str) -> str | None:
    """The form of a word for the tag of its place, or None if it has none."""
    if tag in _PLAIN:
        return plain
    made = _made(plain, tag)
    return made if made and (zipf(made) >= _SAID or zipf(plain) < _SAID + 1) else None


def _made(plain: str, tag: str) -> str | None:
    makers: dict[str, Callable[[str], str | None]] = {
        "NNS": lambda word: None if has_one_form(word) else plural_of(word),
        "VBZ": third_person_of,
        "VBD": _past,
        "VBN": _participle,
        "VBG": _present_participle,
        "JJR": lambda word: _compared(word, 0),
        "RBR": lambda word: _compared(word, 0),
        "JJS": lambda word: _compared(word, 1),
        "RBS": lambda word: _compared(word, 1),
    }
    return makers[tag](plain) if tag in makers else None


def _past(plain: str) -> str:
    return _likelier(plain, "ed") or past_of(plain)


def _participle(plain: str) -> str:
    for verb in irregular_verbs():
        if verb.plain == plain:
            return verb.participles[0]
    return _past(plain)


def _present_participle(plain: str) -> str:
    if plain.endswith("ie"):
        return plain[:-2] + "ying"
    if plain.endswith("e") and not plain.endswith(("ee", "oe", "ye", "be")):
        return plain[:-1] + "ing"
    doubled = _likelier(plain, "ing")
    if doubled:
        return doubled
    return plain + (plain[-1] if _is_short(plain) else "") + "ing"


def _likelier(plain: str, ending: str) -> str | None:
    """The commoner spelling of a longer word with one vowel before its last consonant.

    *Begin* doubles its n and *open* does not, by where the stress lies; frequency knows it.
    """
    irregular = ending == "ed" and any(verb.plain == plain for verb in irregular_verbs())
    if irregular or _is_short(plain) or not _closes(plain):
        return None
    single, double = plain + ending, plain + plain[-1] + ending
    return max(single, double, key=zipf) if max(zipf(single), zipf(double)) else None


def _compared(plain: str, degree: int) -> str | None:
    if plain in _COMPARED:
        return _COMPARED[plain][degree]
    ending = ("er", "est")[degree]
    if plain.endswith("e"):
        return plain + ending[1:]
    if plain.endswith("y") and plain[-2:-1] not in _VOWELS:
        return plain[:-1] + "i" + ending
    return plain + (plain[-1] if _is_short(plain) else "") + ending


def _is_short(plain: str) -> bool:
    """Whether it is one syllable of one vowel that one consonant closes, so that this is doubled."""
    heard = plain.replace("qu", "q")
    return _closes(heard) and sum(letter in "aeiouy" for letter in heard) == 1


def _closes(plain: str) -> bool:
    if len(plain) < 3 or plain[-1] in "aeiouwxyh":
        return False
    return plain[-2] in _VOWELS and plain[-3] not in _VOWELS  # stop, and not look
