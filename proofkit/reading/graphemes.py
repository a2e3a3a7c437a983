"""Which letters of a word stand for which of its sounds, by what children have been taught so far.

The letters and sounds are those of ``wordlists/phonics-graphemes.tsv``: the phases of Letters and
Sounds (Department for Education and Skills, 2007), as taught in England.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache, lru_cache

from proofkit.settings import English
from proofkit.words.data import wordlist
from proofkit.words.pronunciations import Sounds, spoken_as

LAST_PHASE = 5
_CLUSTERS = 4  # the phase that teaches consonants side by side: frog, lamp
_VOWELS = frozenset("AA AE AH AO AW AY EH ER EY IA EA UA IH IY OH OW OY UH UW @".split())
_SPLIT = "_e"


@dataclass(frozen=True, slots=True, kw_only=True)
class Grapheme:
    """Some letters that stand for a sound or two; a split one (a_e) has its e further on."""

    letters: str
    sounds: tuple[str, ...]
    phase: int

    @property
    def is_split(self) -> bool:
        """Whether a consonant stands between its letters."""
        return self.letters.endswith(_SPLIT)

    @property
    def is_vowel(self) -> bool:
        """Whether it stands for a vowel, alone or with what follows."""
        return any(sound in _VOWELS for sound in self.sounds)


@lru_cache(maxsize=20_000)
def phase_of(word: str) -> int | None:
    """The phase, 2 to 5, by which a child can read the word letter by letter; None if by none of them.

    ``word`` is in lower case, with or without an apostrophe. It is read with its British sounds, and in
    full: *to* as before a pause, not as in *to me* (but for *a*, which is taught so). The easiest of several ways counts.
    """
    ways = spoken_as(word, English.BRITISH).ways
    full = [way for way in ways if any(sound[-1] in "12" for sound in way)]
    readings = [_reading(word, way) for way in (full if len(word) > 1 else ways) or ways]
    phases = [_phase(reading) for reading in readings if reading is not None]
    return min(phases, default=None)


def _phase(reading: Sequence[Grapheme]) -> int:
    needed = max((grapheme.phase for grapheme in reading), default=2)
    return max(needed, _CLUSTERS) if _has_cluster(reading) else needed


def _has_cluster(reading: Sequence[Grapheme]) -> bool:
    """Whether consonants stand side by side in one syllable, the s of pots and pans not counted."""
    kinds = "".join("v" if grapheme.is_vowel else "c" for grapheme in reading)
    if reading and reading[-1].letters == "s":
        kinds = kinds[:-1]
    return kinds.startswith("cc") or kinds.endswith("cc") or "ccc" in kinds


def _reading(word: str, way: Sounds) -> tuple[Grapheme, ...] | None:
    """The graphemes of the word in order, of the earliest phases that will do; None if none will."""
    return _Aligner(word, tuple(_plain(sound) for sound in way)).best(0, 0, 0)


def _plain(sound: str) -> str:
    return "@" if sound == "AH0" else sound.rstrip("012")


class _Aligner:
    """Finds the reading of one word that needs the least teaching.

    ``owed`` tells of a split grapheme: 2 while its consonant is to come, 1 when its e is, else 0.
    """

    def __init__(self, letters: str, sounds: tuple[str, ...]) -> None:
        self._letters, self._sounds = letters, sounds
        self._known: dict[tuple[int, int, int], tuple[Grapheme, ...] | None] = {}

    def best(self, at: int, sound: int, owed: int) -> tuple[Grapheme, ...] | None:
        """The easiest reading of the letters from ``at`` as the sounds from ``sound``."""
        place = (at, sound, owed)
        if place not in self._known:
            self._known[place] = min(
                self._all(at, sound, owed),
                key=lambda reading: max((each.phase for each in reading), default=0),
                default=None,
            )
        return self._known[place]

    def _all(self, at: int, sound: int, owed: int) -> Iterator[tuple[Grapheme, ...]]:
        if owed == 1:
            if self._letters[at : at + 1] == "e":
                rest = self.best(at + 1, sound, 0)
                if rest is not None:
                    yield rest
            return
        if at == len(self._letters) and sound == len(self._sounds) and not owed:
            yield ()
        for grapheme, length in self._fitting(at, sound):
            if owed and (grapheme.is_vowel or grapheme.is_split):
                continue
            then = 2 if grapheme.is_split else max(0, owed - 1)
            rest = self.best(at + length, sound + len(grapheme.sounds), then)
            if rest is not None:
                yield (grapheme, *rest)

    def _fitting(self, at: int, sound: int) -> Iterator[tuple[Grapheme, int]]:
        for grapheme in _by_letter().get(self._letters[at : at + 1], ()):
            written = grapheme.letters.removesuffix(_SPLIT)
            heard = self._sounds[sound : sound + len(grapheme.sounds)]
            if self._letters.startswith(written, at) and heard == grapheme.sounds:
                yield grapheme, len(written)


@cache
def _by_letter() -> Mapping[str, tuple[Grapheme, ...]]:
    """The graphemes by their first letter."""
    found: dict[str, list[Grapheme]] = defaultdict(list)
    for line in wordlist("phonics-graphemes.tsv").read_text("utf-8").splitlines():
        if line and not line.startswith("#"):
            phase, letters, sounds = line.split("\t")
            for heard in sounds.split(","):
                grapheme = Grapheme(
                    letters=letters, sounds=tuple(heard.split("+")), phase=int(phase)
                )
                found[letters[0]].append(grapheme)
    return {letter: tuple(graphemes) for letter, graphemes in found.items()}
