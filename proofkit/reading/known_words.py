"""Which words the children of an age band may be expected to know, when they hear or read them.

Nobody has counted that for every word and age. So a word counts as known when one of these says so:

- a published list of the band: Dolch's and Fry's first words, the national curriculum's words of the
  school years, Spache's and Dale's words familiar to American schoolchildren;
- our own list of what these lack: words of home, nursery and story (``home-words.txt``);
- its frequency, in English at large and in children's novels, whichever is less: *selected* is frequent
  in newspapers, *commenced* in old novels, and neither is a child's word;
- for a thing that a picture can show (*wardrobe*, *hedgehog*), a lower frequency in English at large;
- a known word inside it: *slowly*, *unhappy*, *treetop*.

The lists are taken as published. Which list goes with which band and where the frequencies are cut is
our own judgement, made by reading what is left over in picture books; each band knows all that the
younger ones know.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache, lru_cache
from math import log10

from proofkit.reading.familiar import WordList, is_listed, listed_words
from proofkit.words.context.model import context_model
from proofkit.words.data import wordlist
from proofkit.words.frequency import zipf
from proofkit.words.lists import word_set
from proofkit.words.variants import variants

_NC = "nc-year{}-words.txt"
_STATUTORY = {
    "Years 3 and 4": "nc-years3-4-statutory-words.txt",
    "Years 5 and 6": "nc-years5-6-statutory-words.txt",
}
# What each band adds to the lists of the younger ones.
_LISTS: Mapping[str, tuple[tuple[str, ...], tuple[WordList, ...]]] = {
    "board": (
        (
            "dolch-220.tsv",
            "dolch-95-nouns.txt",
            "fry-first-100.txt",
            _NC.format("1-common-exception"),
        ),
        (WordList.SPACHE,),
    ),
    # What a child of nine knows by reading, one of five may know by ear.
    "picture": ((_NC.format("2-common-exception"),), (WordList.DALE_CHALL,)),
    "early-reader": ((), ()),
    "chapter": ((_STATUTORY["Years 3 and 4"],), ()),
    "middle-grade": ((_STATUTORY["Years 5 and 6"],), ()),
}
# Said in every family, and missing in lists that were made for reading.
_KIN = word_set("nephew niece grandad granddad grandpa gran granny nan nana auntie mum mom dad pal")
_AT_HOME = "home-words.txt"
# The least Zipf frequency of a word, and that of a thing that a picture can show.
_FREQUENT: Mapping[str, tuple[float, float]] = {
    "board": (5.0, 4.2),
    "picture": (4.4, 3.1),
    "early-reader": (4.2, 3.1),
    "chapter": (3.7, 2.9),
    "middle-grade": (3.1, 2.5),
}
_NOVELS_ARE_OLD = 0.4  # what a word may be rarer in novels of 1850 to 1930
_ENDINGS = ("ly", "ness", "less", "ful", "er", "est", "y", "en", "ish", "th", "able")
_BEGINNINGS = ("un", "mid")
_SHORTEST = 3  # letters of a word inside another


@dataclass(frozen=True, slots=True, kw_only=True)
class KnownWords:
    """What one band knows.

    ``listed``  words as listed; ``lists``  lists whose words are known in all their forms
    ``word``, ``thing``  the least Zipf frequencies
    """

    listed: frozenset[str]
    lists: tuple[WordList, ...]
    word: float
    thing: float

    def knows(self, lemma: str) -> bool:
        """Whether the band knows the word of that dictionary form."""
        return self._knows_simply(lemma) or any(
            all(self._knows_simply(part) for part in parts)
            for parts in (*_stems(lemma), *_halves(lemma))
        )

    def knows_itself(self, word: str) -> bool:
        """Whether the band knows the very word, and not only one that it is made from (cat, cater)."""
        return (
            word in self.listed
            or any(word in listed_words(each) for each in self.lists)
            or self._is_frequent(word)
        )

    def _knows_simply(self, word: str) -> bool:
        if word in self.listed or any(is_listed(word, each) for each in self.lists):
            return True
        american = variants().american(word) or word
        return american in self.listed or self._is_frequent(word) or self._is_frequent(american)

    def _is_frequent(self, word: str) -> bool:
        if is_thing(word) and zipf(word) >= self.thing:
            return True
        return min(zipf(word), _in_novels(word) + _NOVELS_ARE_OLD) >= self.word


@cache
def known_words(band: str) -> KnownWords:
    """What the children of the band of that name know."""
    listed = set(_KIN)
    lists: list[WordList] = []
    for name, (files, more) in _LISTS.items():
        listed |= {word for file in files for word in _words_of(file)}
        lists += more
        if name == "picture":
            listed |= _at_home()
        if name == band:
            break
    word, thing = _FREQUENT[band]
    return KnownWords(listed=frozenset(listed), lists=tuple(lists), word=word, thing=thing)


def is_thing(word: str) -> bool:
    """Whether the word names something that a picture can show."""
    return word in _things()


def school_years(word: str) -> str:
    """The school years of England whose list has the word ("Years 5 and 6"), or ""."""
    return next((years for years, file in _STATUTORY.items() if word in _words_of(file)), "")


@cache
def _words_of(file: str) -> frozenset[str]:
    lines = wordlist(file).read_text("utf-8").splitlines()
    rows = (line.split("\t") for line in lines if line.strip() and not line.startswith("#"))
    words = (row[0].strip().lower() for row in rows)
    return frozenset(form for word in words for form in _spelt_out(word))


def _at_home() -> frozenset[str]:
    lines = wordlist(_AT_HOME).read_text("utf-8").splitlines()
    return word_set(" ".join(line for line in lines if not line.startswith("#")))


def _spelt_out(entry: str) -> Iterator[str]:
    """The words of an entry such as accident(ally), eight/eighth or equip (-ped, -ment)."""
    for part in entry.replace("’", "'").split("/"):
        plain, bracket, rest = part.partition("(")
        yield plain.strip()
        if bracket and "-" not in rest:
            yield plain.strip() + rest.strip(" )")


@lru_cache(maxsize=1)
def _things() -> frozenset[str]:
    lines = wordlist("things.txt").read_text("utf-8").splitlines()
    return frozenset(line for line in lines if not line.startswith("#"))


@lru_cache(maxsize=8192)
def _in_novels(word: str) -> float:
    """The word's Zipf frequency in the children's novels that the model of context was made from."""
    counts = context_model().counts
    return log10(max(counts.count(word), 0.1) / counts.total) + 9


def _stems(word: str) -> Iterator[tuple[str, ...]]:
    """The word without an ending or a beginning, each way that it can be read."""
    for ending in _ENDINGS:
        if word.endswith(ending) and len(word) >= _SHORTEST + len(ending):
            stem = word.removesuffix(ending)
            yield from ((stem,), (f"{stem}e",))
            if stem.endswith("i"):
                yield (f"{stem[:-1]}y",)
            if stem[-1] == stem[-2]:
                yield (stem[:-1],)
    for beginning in _BEGINNINGS:
        if word.startswith(beginning) and len(word) >= _SHORTEST + 1 + len(beginning):
            yield (word.removeprefix(beginning),)


def _halves(word: str) -> Iterator[tuple[str, ...]]:
    """The two words that it is made from: treetop, bedtime. Perspire is not made of per and spire."""
    for at in range(_SHORTEST, len(word) - _SHORTEST + 1):
        halves = word[:at], word[at:]
        if all(any(is_listed(half, each) for each in WordList) for half in halves):
            yield halves
