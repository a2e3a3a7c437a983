"""How many syllables a word has.

A word is looked up in a list made from the CMU Pronouncing Dictionary, the one with fewer syllables
counting where two pronunciations are accepted. The counting rules are Flesch's (How to Write Plain
English, 1979, ch. 2): a figure, an abbreviation or a symbol is one syllable; hyphenated words and
contractions have the syllables that are spoken.

A word that the list lacks (British words, names, sounds) is tried, in this order,

1. with its drawn-out letters shortened: "whooosh" as "whoosh", "nooo" as "no";
2. without its ending: "meerkats" as "meerkat", "swooshing" as "swoosh" and one more;
3. as two words written as one: "moonbeam" as "moon" and "beam";
4. by its vowel letters: each group of them is a syllable, but for a silent e.
"""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Iterator
from functools import cache
from unicodedata import combining, normalize

from proofkit.words.data import wordlist

_PART = re.compile(r"[^\W_]+(?:['’.,]+[^\W_]+)*['’.]?|['’][^\W\d_]+")
_ABBREVIATION = re.compile(
    r"mr|mrs|ms|mx|dr|st|mt|rev|prof|capt|sgt|lt|col|hon|jr|sr|esq|ltd|co|etc|vs", re.IGNORECASE
)
_DOTTED = re.compile(r"(?:[^\W\d_]\.)+[^\W\d_]?\.?")
_VOWELLESS = re.compile(r"[^\W\d_aeiouyAEIOUY]{2,}")
_DRAWN_OUT = re.compile(r"(.)\1{2,}")
_CONTRACTION = re.compile(r"(?P<stem>.+?)(?P<ending>n't|'(?:s|d|m|ll|ve|re))")
_HISSING = ("s", "x", "z", "ch", "sh", "ce", "ge", "se", "ze")
_SHORTEST_HALF = 3
_SEAM = re.compile(r"(?<=[^aeiouy])e(?=[^aeiouy])")

_GROUP = re.compile(r"[aeiouy]+")
_SILENT = re.compile(
    r"[^aeiouyl]e$|[aeiouylr]le$|[qg]ue$|rre$"  # name, whole, clique; but apple
    r"|[^td]ed$(?<!eed)(?<![^aeiouylr]led)"  # hopped, sprayed; but hunted, need
    r"|[^aeiouycgsxzhl]es$|[aeiouylr]les$|[^cs]hes$"  # names, wholes; but boxes, apples
)
_TWO_BEATS = re.compile(
    r"(?<![ctsgx])i[aou](?!u)|[^q]u[aou](?!y)|eo(?!u)|(?:[aeiu]|oo)ing$|[aeou]y[aeiou]"
    r"|ism$|[^aeiou]ier|iet|[^aeiou]iest$|[^ctsgx]ien|aos|aoti|oe[^ds]|eity|yi"
)


def syllables(word: str) -> int:
    """The syllables of one word as it stands in a text, marks and all; 0 if it has no letter or digit.

    "whirr-tick," has two, "don't" one, "1,000" one, "Mr." one.
    """
    return sum(_of_part(part) for part in _PART.findall(_without_accents(word)))


def _without_accents(word: str) -> str:
    if word.isascii():
        return word
    return "".join(c for c in normalize("NFKD", word) if not combining(c))


@cache
def _of_part(part: str) -> int:
    plain = part.strip("'’.,")
    if any(character.isdigit() for character in plain) or _is_abbreviation(part, plain):
        return 1
    lower = part.lower().replace("’", "'").rstrip(".,")
    return spoken(lower)


def _is_abbreviation(part: str, plain: str) -> bool:
    return (
        _ABBREVIATION.fullmatch(plain) is not None
        or _DOTTED.fullmatch(part) is not None
        or _VOWELLESS.fullmatch(plain) is not None
    )


def spoken(word: str) -> int:
    """The syllables of a plain word in lower case, with straight apostrophes."""
    return listed(word) or unlisted(word)


def listed(word: str) -> int | None:
    """What the pronouncing dictionary says, or None if it lacks the word."""
    lines = _lines()
    at = bisect_left(lines, f"{word} ")
    if at < len(lines):
        found, _, count = lines[at].partition(" ")
        if found == word:
            return int(count)
    return None


@cache
def _lines() -> list[str]:
    # Searching the sorted lines by halving is ready in 7 ms; a dict of them takes 60.
    return wordlist("syllable-counts.txt").read_text(encoding="utf-8").rstrip("\n").split("\n")


def unlisted(word: str) -> int:
    """The syllables of a word that the dictionary lacks."""
    for attempt in (_shortened, _without_ending, _compound):
        count = attempt(word)
        if count:
            return count
    return by_vowels(word)


def _shortened(word: str) -> int | None:
    if not _DRAWN_OUT.search(word):
        return None
    twice, once = _DRAWN_OUT.sub(r"\1\1", word), _DRAWN_OUT.sub(r"\1", word)
    return listed(twice) or listed(once) or by_vowels(once)


def _without_ending(word: str) -> int | None:
    for stem, more in _stems(word):
        count = listed(stem)
        if count:
            return count + more
    return None


def _stems(word: str) -> Iterator[tuple[str, int]]:
    """Each word that this one may be made of, with the syllables that the ending adds."""
    bare = word.strip("'")
    if bare != word:
        yield bare, 0
        yield f"{bare}g", 0  # runnin'
    contraction = _CONTRACTION.fullmatch(bare)
    if contraction:
        yield contraction["stem"], _spoken_ending(contraction["stem"], contraction["ending"])
    else:
        yield from _plural_stems(bare)
        yield from _verb_stems(bare)


def _spoken_ending(stem: str, ending: str) -> int:
    if ending == "'s":
        return int(stem.endswith(_HISSING))
    if ending in ("'d", "'m"):
        return int(stem.endswith(("t", "d")))
    return 1


def _plural_stems(word: str) -> Iterator[tuple[str, int]]:
    if word.endswith("s") and not word.endswith("ss"):
        yield word[:-1], int(word[:-1].endswith(_HISSING))
        if word.endswith("es"):
            yield word[:-2], int(word[:-2].endswith(_HISSING))
        if word.endswith("ies"):
            yield f"{word[:-3]}y", 0


def _verb_stems(word: str) -> Iterator[tuple[str, int]]:
    for ending in ("ing", "ed", "er", "est", "ish", "y"):
        stem = word.removesuffix(ending)
        if stem != word and len(stem) > 2:
            for base in (stem, f"{stem}e", _undoubled(stem)):
                yield base, int(ending != "ed" or base.endswith(("t", "d", "te", "de")))
    for ending in ("ly", "less", "ness", "ful", "some", "ment", "like"):
        if word.endswith(ending):
            yield word.removesuffix(ending), 1


def _undoubled(stem: str) -> str:
    return stem[:-1] if stem[-1] == stem[-2] else stem


def _compound(word: str) -> int | None:
    # Only a silent e in the middle makes a compound differ from its vowel letters: firefly, notebook.
    for seam in _SEAM.finditer(word, _SHORTEST_HALF - 1, len(word) - _SHORTEST_HALF):
        first, second = listed(word[: seam.end()]), listed(word[seam.end() :])
        if first and second:
            return first + second
    return None


def by_vowels(word: str) -> int:
    """A guess from the letters alone: at least one."""
    groups = len(_GROUP.findall(word)) - len(_SILENT.findall(word))
    return max(1, groups + len(_TWO_BEATS.findall(word)))
