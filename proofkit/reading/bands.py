"""Age bands: for whom a book is, and what is usual in books for them.

The figures and where each comes from stand in ``wordlists/age-bands.toml``. None is a standard.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from functools import cache

import msgspec

from proofkit.problem import Unusable
from proofkit.reading.familiar import WordList
from proofkit.words.data import wordlist


class Place(StrEnum):
    """Where a measure stands beside what is usual for an age band."""

    BELOW = "below"
    WITHIN = "within"
    ABOVE = "above"
    WELL_ABOVE = "well above"


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """What is usual for one measure: most books stay within ``least`` to ``usual``.

    ``most`` is the highest that guidance or practice allows; ``source`` says whose figure it is.
    """

    usual: int
    most: int
    source: str
    least: int = 0

    def place(self, value: float) -> Place:
        """Below the least, within the usual, above it, or above even the most."""
        if value > self.most:
            return Place.WELL_ABOVE
        if value > self.usual:
            return Place.ABOVE
        return Place.BELOW if value < self.least else Place.WITHIN


@dataclass(frozen=True, slots=True, kw_only=True)
class AgeBand:
    """A kind of children's book.

    ``name``              as typed: "early-reader"
    ``title``             as read: "early reader"
    ``youngest``, ``oldest``  the children's age in years
    ``reading``           "read to" the child or "read by" the child
    ``words``             words in the book
    ``spread_words``      words on a spread
    ``mean_sentence``, ``longest_sentence``  in words
    ``syllables``         to a hundred words
    ``word_list``, ``off_list``  the list that its words are held against, and how many of a hundred
        are off it
    ``extents``           numbers of pages that such a book may be made in, where the text decides
    ``grade``             American school grade; None for books that are read to the child
    """

    name: str
    title: str
    youngest: int
    oldest: int
    reading: str
    ages_source: str
    words: Figure
    spread_words: Figure
    mean_sentence: Figure
    longest_sentence: Figure
    syllables: Figure
    word_list: WordList
    off_list: Figure
    extents: tuple[int, ...]
    grade: Figure | None = None

    @property
    def plural(self) -> str:
        """Books of this kind, in a sentence: "early readers"."""
        return f"{self.title}s"

    @property
    def phrase(self) -> str:
        """One such book and whom it is for: "a picture book for 3 to 6"."""
        article = "an" if self.title[0] in "aeiou" else "a"
        return f"{article} {self.title} for {self.youngest} to {self.oldest}"


def band_named(name: str) -> AgeBand:
    """The age band of that name; Unusable, naming all of them, if there is none."""
    band = _bands().get(name.strip().lower().replace(" ", "-"))
    if band is None:
        *others, last = band_names()
        raise Unusable(
            f"There is no age band called “{name}”: choose {', '.join(others)} or {last}."
        )
    return band


def band_names() -> tuple[str, ...]:
    """The names of all age bands, youngest first."""
    return tuple(_bands())


@cache
def _bands() -> Mapping[str, AgeBand]:
    tables = tomllib.loads(wordlist("age-bands.toml").read_text(encoding="utf-8"))
    return {
        name: msgspec.convert({"name": name} | table, AgeBand) for name, table in tables.items()
    }
