"""How well one line goes in feet of two syllables, of three, or of both.

Every way of reading the line as beats and off syllables is priced, and the cheapest is kept for each
number of beats, of off syllables before the first beat and after the last. The prices say what a
reader does not mind (a small word on a beat, a beat lost at the line's begin) and what trips the tongue
(a stressed syllable off the beat, two beats together, three syllables off). They were set by hand on
public-domain verse of known metre; ``tests/outside/test_verse.py`` holds them.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import StrEnum
from functools import lru_cache

from proofkit.reading.verse.syllables import (
    ARTICLE,
    DEMOTED,
    EITHER,
    FREE,
    GUESSED,
    PRIMARY,
    SECONDARY,
    SMALL,
    WEAK,
    Word,
)

MOST_BEATS = 8
_DEAREST = 9.0  # more than this above the cheapest is not followed up
INVERTED = -1  # the line begins with a beat and two off syllables, in feet of two


class Tread(StrEnum):
    """How many syllables lie between two beats: one, two, or either."""

    DUPLE = "duple"
    TRIPLE = "triple"
    LOOSE = "loose"


# What so many off syllables between two beats cost.
_GAPS: dict[Tread, tuple[float, ...]] = {
    Tread.DUPLE: (2.2, 0.0, 0.9, 3.0, 6.0),
    Tread.TRIPLE: (2.4, 0.75, 0.0, 1.6, 5.0),
    Tread.LOOSE: (2.2, 0.25, 0.25, 1.8, 5.0),
}
_MOST_OFF = 4
_PASSED_OVER = 1.1  # a stressed syllable between two quick beats: "too BIG," muttered PUFFin
_UPBEAT = 0.8  # a stressed syllable before the first beat of a quick metre: happy CHRISTmas to all
_PAUSED_CLASH = 1.2  # two beats with a comma between them
_INVERSION = 0.3
_TURNED = 1.4  # a word with its stress on the wrong syllable: ALone, litTLE
_ON_BEAT = {
    PRIMARY: 0.0,
    DEMOTED: 0.0,
    SECONDARY: 0.0,
    WEAK: 0.5,
    FREE: 0.0,
    SMALL: 0.35,
    ARTICLE: 1.0,
    GUESSED: 0.1,
    EITHER: 0.1,
}
_OFF_BEAT = {
    PRIMARY: 1.6,
    DEMOTED: 0.35,
    SECONDARY: 0.4,
    WEAK: 0.0,
    FREE: 0.4,
    SMALL: 0.0,
    ARTICLE: 0.0,
    GUESSED: 0.1,
    EITHER: 0.2,
}


@dataclass(frozen=True, slots=True, order=True)
class Shape:
    """``lead`` off syllables (or INVERTED), so many ``beats``, ``trail`` off syllables."""

    lead: int
    beats: int
    trail: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Scan:
    """The cheapest reading of a line in one shape; ``pattern`` has a "/" or an "x" for each syllable."""

    cost: float
    pattern: str


_State = tuple[int, int, int]  # lead (or what leads so far), beats, off syllables since the last
_Paths = dict[_State, tuple[float, str]]


@lru_cache(
    maxsize=4096
)  # a refrain comes again; and a draft is scanned again with one line changed
def scans(words: tuple[Word, ...], tread: Tread) -> Mapping[Shape, Scan]:
    """The cheapest reading of a line in each shape that it can have."""
    paths: _Paths = {(0, 0, 0): (0.0, "")}
    for word in words:
        after: _Paths = {}
        for reading in word.readings:
            grown = _spoken(paths, reading.syllables, tread, pause=word.pause)
            _merge(
                after, ((state, cost + reading.cost, way) for state, (cost, way) in grown.items())
            )
        paths = _pruned(after)
    return {
        Shape(lead, beats, off): Scan(cost=round(cost, 3), pattern=way)
        for (lead, beats, off), (cost, way) in paths.items()
        if beats
    }


def _spoken(paths: _Paths, syllables: str, tread: Tread, *, pause: bool) -> _Paths:
    for at, kind in enumerate(syllables):
        after: _Paths = {}
        two = syllables[max(0, at - 1) : at + 1]
        for (lead, beats, gap), (cost, way) in paths.items():
            if gap < _MOST_OFF:
                price = _off_price(kind, two, beats, gap, tread)
                _keep(after, (lead, beats, gap + 1), cost + price, f"{way}x")
            if beats < MOST_BEATS:
                state, price = _beat(lead, beats, gap, tread)
                if pause and at == 0 and gap == 0 and beats:
                    price = _PAUSED_CLASH
                if gap and two == PRIMARY + WEAK:
                    price += _TURNED
                _keep(after, state, cost + _ON_BEAT[kind] + price, f"{way}/")
        paths = after
    return paths


def _off_price(kind: str, two: str, beats: int, gap: int, tread: Tread) -> float:
    """What it costs to read a syllable off the beat; ``two`` is it and the one before it in its word."""
    if kind != PRIMARY:
        return _OFF_BEAT[kind]
    if beats == 0:
        return _OFF_BEAT[kind] if tread is Tread.DUPLE else _UPBEAT
    turned = _TURNED if gap == 0 and two == WEAK + PRIMARY else 0.0
    return turned + (_PASSED_OVER if tread is Tread.TRIPLE else _OFF_BEAT[kind])


def _beat(lead: int, beats: int, gap: int, tread: Tread) -> tuple[_State, float]:
    if beats == 0:
        return (gap, 1, 0), 0.0
    if tread is Tread.DUPLE and beats == 1 and lead == 0 and gap == 2:
        return (INVERTED, 2, 0), _INVERSION
    return (lead, beats + 1, 0), _GAPS[tread][gap]


def _keep(paths: _Paths, state: _State, cost: float, way: str) -> None:
    old = paths.get(state)
    if old is None or cost < old[0]:
        paths[state] = (cost, way)


def _merge(paths: _Paths, more: Iterable[tuple[_State, float, str]]) -> None:
    for state, cost, way in more:
        _keep(paths, state, cost, way)


def _pruned(paths: _Paths) -> _Paths:
    if not paths:
        return paths
    least = min(cost for cost, _ in paths.values())
    return {state: path for state, path in paths.items() if path[0] <= least + _DEAREST}
