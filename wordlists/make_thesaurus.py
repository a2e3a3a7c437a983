"""Make ``thesaurus.tsv`` and ``things.txt`` from WordNet: simpler words, and what a picture can show.

    apt-get install wordnet-base
    python wordlists/make_thesaurus.py /usr/share/wordnet

A row is a word in its dictionary form, its part of speech (n, v, a, r) and words that are more
frequent and mean much the same, each with a weight from 1 to 99. The weight is

    the share of the word's uses that have this sense
    × a power of the share of the other word's uses that have it
      and its part of speech (nobody says to cabbage)
    × how near the two are: 1 in one set of synonyms, less for the word that a set is a kind of
      (devour: eat) and for adjectives gathered round another (frigid: cold)
      or that the adverb is made from (silently: quietly)

added up over the senses. The shares are those of WordNet's own count of uses in tagged texts, and half
a use more for every sense, the first weighing most, for most senses were never met there.

``things.txt`` holds the nouns that may be an animal or whose first sense is a plant, food, a part of the body, a
thing that somebody made or one that nature did.
"""

from __future__ import annotations

import sys
from collections import defaultdict
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

HERE = Path(__file__).resolve().parent
FILES = {"noun": "n", "verb": "v", "adj": "a", "adv": "r"}
# The lexicographers' files of animals, things made, bodies, food, things of nature, plants.
ANIMALS = "05"
SHOWN = frozenset({"05", "06", "08", "13", "17", "20"})
KINDS = {"n": 1, "v": 2, "a": 3, "r": 4, "s": 5}
RARE, SIMPLE, SIMPLER = 1.8, 3.4, 0.25  # Zipf frequencies: of the word, of the other, and between
KIND_OF, GATHERED, BESIDE = 0.4, 0.6, 0.2
AS_ADVERB = 0.8
NARROW = 0.7  # power: the less, the more a word may be offered for one of its rarer senses
UNMET = 0.3  # uses, of a first sense that the tagged texts don't have
LEAST, MOST_WORDS = 0.01, 10
# Senses so wide that they say nothing of what happens: to chug is more than to sound. Those that hold
# one of these words.
TOO_WIDE = frozenset(
    "be become seem appear sound locomote displace change act express communicate feel touch interact "
    "cause breathe".split()
)
# Marks of usage that WordNet gives to words no children's book wants.
SLURS = ("disparagement", "slang", "obscenity", "ethnic slur", "street name")
# Words that it gives unmarked, and that no author wants to be offered.
UNWANTED = frozenset(
    "ass arse bitch bastard cock dick screw hump fag gay queer boob breast crap piss damn hell knockers "
    "fuck shit bang bonk hooker sex sexy nigger gypsy jew tit prick pussy snatch bugger colored coloured "
    "negro savage heathen oriental retarded idiot moron cripple crippled lame dumb insane lunatic whore "
    "slut pimp".split()
)
HEAD = """\
# Simpler words of the same sense, with weights from 1 to 99. word, part of speech, others.
# Source: WordNet 3.0 (Debian package wordnet-base 1:3.0-37); made by make_thesaurus.py.
# Licence: the WordNet licence; its whole text is in thesaurus-licence.txt.
# WordNet 3.0 Copyright 2006 by Princeton University. All rights reserved.
"""

MOSTLY, SOMETIMES = 0.5, 0.15  # of a word's uses as a noun; seal, duck and crane are verbs as well
HEAD_OF_THINGS = """\
# Nouns whose first sense is something that a picture can show.
# Source, licence and script: those of thesaurus.tsv.
# WordNet 3.0 Copyright 2006 by Princeton University. All rights reserved.
"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Synset:
    """One sense: the words that share it, its links (what kind, to which sense) and its file."""

    words: tuple[str, ...]
    links: tuple[tuple[str, str], ...]
    field: str


def synsets(folder: Path) -> dict[str, Synset]:
    """Every sense by part of speech and place, as in "n00001740"."""
    found = {}
    for name, letter in FILES.items():
        for line in (folder / f"data.{name}").read_text("utf-8").splitlines():
            if not line.startswith(" "):
                found[letter + line[:8]] = _synset(line)
    return found


def _synset(line: str) -> Synset:
    fields = line.partition(" | ")[0].split()
    count = int(fields[3], 16)
    words = tuple(word.partition("(")[0] for word in fields[4 : 4 + 2 * count : 2])
    at = 5 + 2 * count
    links = tuple(
        (fields[place], fields[place + 2].replace("s", "a") + fields[place + 1])
        for place in range(at, at + 4 * int(fields[at - 1]), 4)
    )
    return Synset(words=words, links=links, field=fields[1])


def senses(folder: Path) -> dict[tuple[str, str], list[str]]:
    """The senses of every word and part of speech, the most frequent first."""
    found = {}
    for name, letter in FILES.items():
        for line in (folder / f"index.{name}").read_text("utf-8").splitlines():
            if not line.startswith(" "):
                fields = line.split()
                found[fields[0], letter] = [letter + at for at in fields[-int(fields[2]) :]]
    return found


def uses(folder: Path) -> Mapping[tuple[str, str, int], int]:
    """How often each sense of a word (counted from 0) was met in the tagged texts."""
    counts: dict[tuple[str, str, int], int] = defaultdict(int)
    letters = {str(number): letter.replace("s", "a") for letter, number in KINDS.items()}
    for line in (folder / "cntlist.rev").read_text("utf-8").splitlines():
        key, number, times = line.split()
        word, _, rest = key.partition("%")
        counts[word, letters[rest[0]], int(number) - 1] += int(times)
    return counts


class Thesaurus:
    """WordNet, as far as it is needed here."""

    def __init__(self, folder: Path) -> None:
        self.synsets, self.senses, self._uses = synsets(folder), senses(folder), uses(folder)
        self._adjectives: dict[str, list[str]] = defaultdict(list)
        for word, letter in self.senses:
            if letter == "a":
                self._adjectives[_adverb(word)].append(word)

    def share(self, word: str, letter: str, sense: str) -> float:
        """The share of the word's uses that have the sense."""
        known = self.senses.get((word.lower(), letter), [])
        if sense not in known:
            return 0.0
        weights = [
            self._uses[word.lower(), letter, n] + 0.5 + 1.0 / (n + 1) for n in range(len(known))
        ]
        return weights[known.index(sense)] / sum(weights)

    def is_mostly(self, word: str, letter: str) -> float:
        """The share of the word's uses that have the part of speech."""
        met = {
            other: sum(
                self._uses[word.lower(), other, n] + UNMET / (n + 1)
                for n in range(len(self.senses.get((word.lower(), other), [])))
            )
            for other in FILES.values()
        }
        return met[letter] / sum(met.values())

    def likely(self, word: str, letter: str) -> list[str]:
        """The senses that a story may mean: the animal, where there is one, or the thing if it comes first.

        A gull in a story is a bird and nobody's fool.
        """
        senses = self.senses[word, letter]
        if letter != "n":
            return senses
        animals = [sense for sense in senses if self.synsets[sense].field == ANIMALS]
        shown = animals or senses
        return shown[:1] if self.synsets[shown[0]].field in SHOWN else senses

    def is_derived_form(self, word: str, letter: str) -> bool:
        """Whether it is a comparative or a plural (older, words): it would change the form."""
        endings = {"a": ("er", "r", "est", "st"), "n": ("s",)}.get(letter, ())
        return any(
            word.endswith(ending) and (word.removesuffix(ending), letter) in self.senses
            for ending in endings
        )

    def others(self, word: str, letter: str) -> dict[str, float]:
        """The words that may stand for it, weighed as the module says."""
        found: dict[str, float] = defaultdict(float)
        for sense in self.likely(word, letter):
            own = self.share(word, letter, sense)
            for other, near, its_sense in self._near(sense, letter):
                fit = self.share(other, letter, its_sense) * self.is_mostly(other, letter)
                found[other] += own * near * fit**NARROW
        if letter == "r":
            for adjective in self._made_from(word):
                for other, weight in self.others(adjective, "a").items():
                    found[_adverb(other)] += AS_ADVERB * weight
        found.pop(word, None)
        return {other: weight for other, weight in found.items() if (other, letter) in self.senses}

    def _made_from(self, adverb: str) -> list[str]:
        """The adjectives that an adverb is made from: silent, of silently."""
        return self._adjectives.get(adverb, [])

    def _near(self, sense: str, letter: str) -> Iterator[tuple[str, float, str]]:
        synset = self.synsets[sense]
        if self._is_slur(synset):
            return
        yield from ((word, 1.0, sense) for word in synset.words)
        for link, target in synset.links:
            if link == "@" and letter == "v":
                wider = self.synsets[target].words
                if TOO_WIDE.isdisjoint(wider):
                    yield from ((word, KIND_OF, target) for word in wider)
            elif link == "&" and letter == "a":
                yield from self._gathered(synset, target)

    def _gathered(self, synset: Synset, target: str) -> Iterator[tuple[str, float, str]]:
        middle = self.synsets[target]
        near = GATHERED if len(middle.links) > len(synset.links) else BESIDE
        yield from ((word, near, target) for word in middle.words)

    def _is_slur(self, synset: Synset) -> bool:
        return any(
            link == ";u" and any(slur in self.synsets[target].words[0] for slur in SLURS)
            for link, target in synset.links
        )


def _adverb(adjective: str) -> str:
    if adjective.endswith("le"):
        return adjective[:-1] + "y"
    return (adjective[:-1] + "i" if adjective.endswith("y") else adjective) + "ly"


def main(folder: Path) -> None:
    """Write both tables beside this script."""
    sys.path.insert(0, str(HERE.parent))
    from proofkit.words.frequency import zipf  # noqa: PLC0415 - found only once the path is set

    thesaurus = Thesaurus(folder)
    usual = [
        (word, letter)
        for word, letter in sorted(thesaurus.senses)
        if word.isalpha() and word not in UNWANTED and zipf(word) >= RARE
    ]
    rows = [row for word, letter in usual if (row := _row(thesaurus, word, letter, zipf))]
    _write("thesaurus.tsv", HEAD, rows)
    things = [
        f"{word}\n"
        for word, letter in usual
        if letter == "n"
        and (field := thesaurus.synsets[thesaurus.likely(word, "n")[0]].field) in SHOWN
        and thesaurus.is_mostly(word, "n") > (SOMETIMES if field == ANIMALS else MOSTLY)
    ]
    _write("things.txt", HEAD_OF_THINGS, things)


def _row(thesaurus: Thesaurus, word: str, letter: str, zipf: Callable[[str], float]) -> str | None:
    others = {
        other: weight
        for other, weight in thesaurus.others(word, letter).items()
        if other.isalpha()
        and other.islower()
        and len(other) > 1
        and other not in UNWANTED
        and not thesaurus.is_derived_form(other, letter)
        and weight >= LEAST
        and zipf(other) >= max(SIMPLE, zipf(word) + SIMPLER)
    }
    best = sorted(others, key=lambda other: (-others[other], other))[:MOST_WORDS]
    weighed = " ".join(f"{o}:{max(1, min(99, round(100 * others[o])))}" for o in best)
    return f"{word}\t{letter}\t{weighed}\n" if best else None


def _write(name: str, head: str, rows: Sequence[str]) -> None:
    (HERE / name).write_text(head + "".join(rows), "utf-8", newline="\n")
    print(f"{name}: {len(rows)} words")  # noqa: T201 - says what it did


if __name__ == "__main__":
    main(Path(sys.argv[1]))
