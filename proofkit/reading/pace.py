"""How the words are dealt out over the spreads, and how long they take to read aloud."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import groupby
from statistics import median

from proofkit.reading.bands import AgeBand, Place

_FAR_ABOVE_THE_BOOK = 2
_IN_A_ROW = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Pace:
    """The rhythm of a book, by the places of its spreads (0 is the first).

    ``usual``     the median number of words, of spreads that have any
    ``heaviest``, ``lightest``  of spreads that have words; empty where all have the same
    ``empty``     spreads of story without a word
    ``heavy``     more words than books of the band usually have, or twice the book's own usual number
    ``in_a_row``  the first and last of every three and more heavy ones in a row
    """

    usual: float
    heaviest: tuple[int, ...]
    lightest: tuple[int, ...]
    empty: tuple[int, ...]
    heavy: tuple[int, ...]
    in_a_row: tuple[tuple[int, int], ...]


def pace_of(words: Sequence[int], band: AgeBand) -> Pace:
    """The rhythm of spreads with so many words each."""
    filled = [each for each in words if each]
    usual = median(filled) if filled else 0.0
    heavy = [at for at, each in enumerate(words) if each and _is_heavy(each, usual, band)]
    uneven = len(set(filled)) > 1
    return Pace(
        usual=usual,
        heaviest=tuple(_with(words, max(filled))) if uneven else (),
        lightest=tuple(_with(words, min(filled))) if uneven else (),
        empty=tuple(_with(words, 0)),
        heavy=tuple(heavy),
        in_a_row=tuple(_rows(heavy)),
    )


def seconds_aloud(words: int, words_a_minute: int) -> int:
    """How long so many words take a reader, in whole seconds."""
    return round(60 * words / words_a_minute)


def _is_heavy(words: int, usual: float, band: AgeBand) -> bool:
    above_the_band = band.spread_words.place(words) in (Place.ABOVE, Place.WELL_ABOVE)
    # Twice a handful is a handful still.
    own = words >= _FAR_ABOVE_THE_BOOK * usual and words > band.spread_words.usual / 2
    return above_the_band or own


def _with(words: Sequence[int], number: int) -> list[int]:
    return [at for at, each in enumerate(words) if each == number]


def _rows(places: Sequence[int]) -> list[tuple[int, int]]:
    """The ends of every run of neighbours that is long enough."""
    runs = [
        [place for _, place in group]
        for _, group in groupby(enumerate(places), key=lambda pair: pair[1] - pair[0])
    ]
    return [(run[0], run[-1]) for run in runs if len(run) >= _IN_A_ROW]
