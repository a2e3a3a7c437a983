"""Whether two names may be one, misspelt."""

from __future__ import annotations

import re
import unicodedata

from rapidfuzz.distance import OSA

_SHORTEST = 4
_MOST = 2
# Endings that make another word of a name: its plural, its people, its pet form, its language.
_OTHER_WORD = re.compile(r"(?:s|es|n|an|ian|ish|[a-z]?y|[a-z]?ie|[a-z]?ee|in|ina|ita|ette|['’].*)$")
# Letters that English writes for one sound, in the order in which they are looked for.
_SAME_SOUND = (
    ("ph", "f"),
    ("ck", "k"),
    ("th", "t"),
    ("sh", "s"),
    ("qu", "k"),
    ("c", "k"),
    ("z", "s"),
    ("y", "i"),
    ("h", ""),
    ("ie", "i"),
    ("ee", "i"),
    ("ea", "i"),
    ("oo", "u"),
    ("ou", "u"),
)


def alike(one: str, other: str) -> bool:
    """Whether the lower-case names differ by one letter after the first, or by two and sound alike.

    Two letters that changed places count as one; names of four letters must sound alike, and one of
    three has but a doubled letter's difference (Nel, Nell). Names that differ in their first letter
    are two people, as in every rhyme; so are a name and its plural or its pet form.
    """
    if one[0] != other[0] or _is_derived(one, other) or "-" in one + other:
        return False
    if min(len(one), len(other)) < _SHORTEST:
        return len(one) != len(other) and _singled(one) == _singled(other)
    distance = OSA.distance(one, other)
    if distance > 1 or max(len(one), len(other)) == _SHORTEST:
        return distance <= _MOST and sounds_alike(one, other)
    return distance == 1


def same_but_for_accents(one: str, other: str) -> bool:
    """Whether only accents part them: zoë, zoe."""
    return one != other and plain(one) == plain(other)


def sounds_alike(one: str, other: str) -> bool:
    """Whether English would read them the same: sara and sarah, tibs and tibbs."""
    return _sound(one) == _sound(other)


def _is_derived(one: str, other: str) -> bool:
    short, long = sorted((one, other), key=len)
    if long.startswith(short):
        return len(long) > len(short) and _OTHER_WORD.fullmatch(long[len(short) :]) is not None
    last = {one[-1], other[-1]}
    changed_end = len(one) == len(other) and one[:-1] == other[:-1]
    # Another last vowel makes a man of a woman: Mario, Maria. The Redlegs are redlegged.
    return changed_end and (last <= set("aeioy") or last == {"s", "d"})


def _singled(word: str) -> str:
    """The word with its doubled letters written once."""
    return re.sub(r"(.)\1", r"\1", word)


def plain(word: str) -> str:
    """The word without its accents."""
    return "".join(c for c in unicodedata.normalize("NFD", word) if not unicodedata.combining(c))


def _sound(word: str) -> str:
    sound = plain(word)
    for letters, one in _SAME_SOUND:
        sound = sound.replace(letters, one)
    sound = re.sub(r"(.)\1+", r"\1", sound)
    return re.sub(r"(?<=.)e$", "", sound)
