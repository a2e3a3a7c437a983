"""What is counted in a text before anything is worked out of it."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable
from dataclasses import dataclass, replace

from proofkit.book import counted_words
from proofkit.reading.familiar import WordList, is_listed, listed_words, parts
from proofkit.reading.sentences import sentences
from proofkit.reading.syllables import syllables

POLYSYLLABLE = 3  # syllables: McLaughlin 1969, Gunning 1952
_SHORTEST_HALF = 3
_LONG_BY_ENDING = re.compile(r"(?:ing|[td]ed|(?:[sxz]|ch|sh|[cg])es)$")


@dataclass(frozen=True, slots=True, kw_only=True)
class Counts:
    """The counts of a page, a run of pages or a book.

    ``longest``        words of the longest sentence
    ``letters``, ``characters``  the latter with figures
    ``polysyllables``  words of three syllables and more
    ``complex_words``  those of them that Gunning counts
    ``off_dale_chall`` how often a word off that list is used
    ``off_spache``     the same for the other list
    ``unfamiliar``     the words off the list of Spache, each once
    """

    words: int = 0
    sentences: int = 0
    syllables: int = 0
    longest: int = 0
    letters: int = 0
    characters: int = 0
    polysyllables: int = 0
    complex_words: int = 0
    off_dale_chall: int = 0
    off_spache: int = 0
    unfamiliar: frozenset[str] = frozenset()


def total(counts: Iterable[Counts]) -> Counts:
    """The counts of several texts as those of one."""
    every = list(counts)
    return Counts(
        words=sum(c.words for c in every),
        sentences=sum(c.sentences for c in every),
        syllables=sum(c.syllables for c in every),
        longest=max((c.longest for c in every), default=0),
        letters=sum(c.letters for c in every),
        characters=sum(c.characters for c in every),
        polysyllables=sum(c.polysyllables for c in every),
        complex_words=sum(c.complex_words for c in every),
        off_dale_chall=sum(c.off_dale_chall for c in every),
        off_spache=sum(c.off_spache for c in every),
        unfamiliar=frozenset().union(*(c.unfamiliar for c in every)),
    )


def is_complex(word: str, names: Collection[str] = ()) -> bool:
    """Whether Gunning counts a word as hard: three syllables, and not an easy word made long.

    Names are not, nor compounds of easy words (*grandmother*, *merry-go-round*), nor words that have
    their third syllable from -es, -ed or -ing. A compound is one of two words on the list of Dale and
    Chall, or of hyphened words of one or two syllables each.
    """
    if syllables(word) < POLYSYLLABLE:
        return False
    halves = parts(word)
    if any(part.removesuffix("'s") in names for part in halves):
        return False
    if len(halves) > 1:
        return any(syllables(part) >= POLYSYLLABLE for part in halves)
    return not any(_is_easy_made_long(part) for part in halves)


class Counter:
    """Counts texts of one book, whose ``names`` (in lower case) are no hard words."""

    def __init__(self, names: Collection[str] = ()) -> None:
        self._names = frozenset(names)
        self._known: dict[str, Counts] = {}

    def count(self, text: str) -> Counts:
        """The counts of a text; a sentence ends with it."""
        told = [
            [self._word(word.group()) for word in counted_words(text[start:end])]
            for start, end in sentences(text)
        ]
        return replace(
            total(word for words in told for word in words),
            sentences=len(told),
            longest=max(map(len, told), default=0),
        )

    def _word(self, word: str) -> Counts:
        """A word as a text of its own: a book says most of its words again and again."""
        counts = self._known.get(word)
        if counts is None:
            counts = self._known[word] = self._counted(word)
        return counts

    def _counted(self, word: str) -> Counts:
        beats = syllables(word)
        off = {which: self._is_off(word, which) for which in WordList}
        return Counts(
            words=1,
            syllables=beats,
            letters=sum(character.isalpha() for character in word),
            characters=sum(character.isalnum() for character in word),
            polysyllables=int(beats >= POLYSYLLABLE),
            complex_words=int(is_complex(word, self._names)),
            off_dale_chall=int(off[WordList.DALE_CHALL]),
            off_spache=int(off[WordList.SPACHE]),
            unfamiliar=frozenset([" ".join(parts(word))] if off[WordList.SPACHE] else []),
        )

    def _is_off(self, word: str, which: WordList) -> bool:
        return any(
            part.removesuffix("'s") not in self._names and not is_listed(part, which)
            for part in parts(word)
        )


def _is_easy_made_long(part: str) -> bool:
    ending = _LONG_BY_ENDING.search(part)
    if ending and syllables(part) == POLYSYLLABLE:
        return True
    easy = listed_words(WordList.DALE_CHALL)
    return any(
        part[:at] in easy and part[at:] in easy
        for at in range(_SHORTEST_HALF, len(part) - _SHORTEST_HALF + 1)
    )
