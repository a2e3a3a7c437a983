"""How much of a book a child can read alone who has been taught up to a phase of Letters and Sounds.

The phases are those of the programme of that name (Department for Education and Skills, 2007), the
common ground of the phonics schemes of England: 2 to 4 are taught in Reception, at four to five years,
and 5 in Year 1. A scheme may have its letters in another order.

A word is decodable where each of its letters stands for a sound as taught by then, in British speech.
Tricky words, which are taught by sight, are counted apart. Names are words like any other: a child must
read them too.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from proofkit.book import Book, Span
from proofkit.problem import Unusable
from proofkit.reading.bands import AgeBand
from proofkit.reading.graphemes import LAST_PHASE, phase_of
from proofkit.words.data import wordlist

FIRST_PHASE = 2
_WORD = re.compile(r"[^\W\d_]+(?:['’][^\W\d_]+)*")
# Words whose 's is read with them as one: the rest may be anybody's possession.
_WITH_IS = frozenset({"it", "that", "he", "she", "what", "let", "there", "here", "who", "where"})


@dataclass(frozen=True, slots=True, kw_only=True)
class NotYet:
    """A word that cannot be read yet: ``phase`` is when it can, or None where it never is letter by letter."""

    word: str
    spans: tuple[Span, ...]
    phase: int | None

    @property
    def count(self) -> int:
        """How often the story has it."""
        return len(self.spans)


@dataclass(frozen=True, slots=True, kw_only=True)
class Decodable:
    """What a child can read at one phase; hyphened words count as their parts.

    ``words``      running words of the story
    ``decodable``  how many of them can be read letter by letter
    ``tricky``     the tricky words taught by then that the story has, each with how often; those that
        can be read letter by letter by now are not among them
    ``not_yet``    the others, the most frequent first
    """

    phase: int
    words: int
    decodable: int
    tricky: Mapping[str, int]
    not_yet: tuple[NotYet, ...]

    @property
    def share(self) -> float:
        """The share of the running words that can be read letter by letter, 0 to 1."""
        return self.decodable / self.words if self.words else 0.0

    @property
    def share_with_tricky(self) -> float:
        """The same with the tricky words that have been taught."""
        known = self.decodable + sum(self.tricky.values())
        return known / self.words if self.words else 0.0


def decodable(book: Book, phase: int) -> Decodable:
    """How much of the story can be read at the phase. Raises Unusable if there is no such phase."""
    if not FIRST_PHASE <= phase <= LAST_PHASE:
        raise Unusable(
            f"There is no phonics phase {phase} to read at: choose {FIRST_PHASE} to {LAST_PHASE}."
        )
    places = _words(book)
    readable = {word: _is_readable(word, phase) for word in places}
    tricky = {word for word in places if not readable[word] and is_tricky(word, phase)}
    late = [word for word in places if not readable[word] and word not in tricky]
    not_yet = [NotYet(word=word, spans=tuple(places[word]), phase=phase_of(word)) for word in late]
    return Decodable(
        phase=phase,
        words=sum(len(spans) for spans in places.values()),
        decodable=sum(len(spans) for word, spans in places.items() if readable[word]),
        tricky={word: len(places[word]) for word in sorted(tricky)},
        not_yet=tuple(sorted(not_yet, key=lambda late: (-late.count, late.word))),
    )


def phase_for(band: AgeBand) -> int | None:
    """The phase that children of a band who read alone have been taught; None where they are read to.

    Who reads alone has been through Year 1 at the youngest, and so through phase 5.
    """
    return LAST_PHASE if band.reading == "read by" else None


def is_tricky(word: str, phase: int) -> bool:
    """Whether the word, or the word without its s, is taught by sight by that phase."""
    forms = {word, word.removesuffix("s"), f"{word}s"}
    return any(taught <= phase and not forms.isdisjoint(words) for taught, words in _tricky())


def _is_readable(word: str, phase: int) -> bool:
    needed = phase_of(word)
    return needed is not None and needed <= phase


def _words(book: Book) -> Mapping[str, list[Span]]:
    places: dict[str, list[Span]] = defaultdict(list)
    for page in book.pages:
        for match in _WORD.finditer(page.prose):
            word = match.group().lower().replace("’", "'")
            bare = word.removesuffix("'s")
            places[bare if bare != word and bare not in _WITH_IS else word].append(
                page.span(match.start(), match.end())
            )
    return places


@cache
def _tricky() -> tuple[tuple[int, frozenset[str]], ...]:
    """The tricky words by phase, and with the last the national curriculum's exception words of Year 1."""
    lines = wordlist("phonics-tricky-words.tsv").read_text("utf-8").splitlines()
    rows = (line.split("\t") for line in lines if line and not line.startswith("#"))
    taught = [(int(phase), frozenset(words.split())) for phase, words in rows]
    year_1 = wordlist("nc-year1-common-exception-words.txt").read_text("utf-8").splitlines()
    listed = frozenset(line.strip().lower() for line in year_1 if not line.startswith("#"))
    return (*taught, (LAST_PHASE, listed))
