"""Which of the book's words may be compounds: written with a hyphen, or as one word and as two."""

from __future__ import annotations

import re
from collections.abc import Mapping, Set
from itertools import pairwise

from proofkit.habits._sound_words import is_echo, rhymes
from proofkit.words.dictionary import Dictionary
from proofkit.words.frequency import zipf
from proofkit.words.lists import word_set
from proofkit.words.two_spellings import family_by_word
from proofkit.words.vocabulary import Vocabulary

MARKS = re.compile(r"[-‑ \u00a0\n]+")
PREFIXES = word_set("re un co pre non de anti mis over under out semi sub super ultra mid")
# With a hyphen these are other words: to re-cover a chair, to recover.
_OTHER_WITH_HYPHEN = word_set(
    """
    recover recovered recovering reform reformed resign resigned recount recounted recreation remark
    remarked resent resented relay relayed react release represent reserve resort restrain recollect
    return repose reprove redress repress research coop unionised overall overhead undertake
    outlook overcome overcoat undone predate decoy presents present
    """
)
_SHORTEST_HALF = 3
_SMALL_FIRST = word_set("to by up on tv")
# A half that is no more frequent is a syllable as a rule: hap-pen.
_RARE = 2.7


def key_of(compound: str) -> str:
    """The compound's letters in lower case and in the singular: "Ice-creams" gives "icecream"."""
    return singular(MARKS.sub("", compound.lower()))


def singular(word: str) -> str:
    """The word less the s of a plural."""
    return word[:-1] if word.endswith("s") and not word.endswith(("ss", "us", "is")) else word


def hyphened_in(vocabulary: Vocabulary, known: Dictionary) -> Mapping[str, tuple[str, ...]]:
    """The compounds that the book has with a hyphen, and their words."""
    found = {}
    for word in vocabulary.uses:
        parts = tuple(word.replace("‑", "-").split("-"))
        if len(parts) > 1 and not vocabulary.is_name(word) and _are_words(parts, known):
            found[key_of(word)] = parts
    return {key: parts for key, parts in found.items() if key not in not_ours()}


def not_ours() -> Set[str]:
    """Keys that are another matter, or two words."""
    return _OTHER_WITH_HYPHEN | {key_of(word) for word in family_by_word()}


def _are_words(parts: tuple[str, ...], known: Dictionary) -> bool:
    """Whether all are words: no syllables (laugh-ing), no drawl (we-ell), no echo (tick-tock)."""
    if parts[0] in PREFIXES:
        return all(len(part) >= _SHORTEST_HALF and part in known.words for part in parts[1:])
    joined = "".join(parts)
    if _is_rhythm(parts, known) or not all(part in known.words for part in parts):
        return False
    if len(parts) > 2:
        drawled = any(one == other for one, other in pairwise(parts))
        return joined not in known.words and not drawled  # in-vis-i-ble, ba-a-a-a
    if min(map(len, parts)) < _SHORTEST_HALF:
        return parts[0] in _SMALL_FIRST and joined in known.words
    return joined not in known.words or min(map(zipf, parts)) > _RARE


def _is_rhythm(parts: tuple[str, ...], known: Dictionary) -> bool:
    """Whether the parts are an echo, and no compound that happens to rhyme: nightlight, cookbook."""
    return is_echo(parts) and not (rhymes(parts) and "".join(parts) in known.words)


def closed_and_apart(vocabulary: Vocabulary, known: Dictionary) -> Set[str]:
    """The closed words of the book whose two halves are words of the book as well."""
    uses = vocabulary.uses
    found = set()
    for word in uses:
        if not word.isalpha() or vocabulary.is_name(word):
            continue
        for at in range(_SHORTEST_HALF, len(word) - _SHORTEST_HALF + 1):
            first, second = word[:at], word[at:]
            both = first in uses and (second in uses or singular(second) in uses)
            if both and first in known.words and not _is_rhythm((first, second), known):
                found.add(key_of(word))
    return found - not_ours()
