"""The metre that fits a whole poem best.

Each line is priced in each of the five feet, strict or loose, for every number of beats. How many beats
a line of the poem should have is said by a pattern: the same for all, two in turn (ballad metre), or
one for each line of the stanza (limericks). The foot and the pattern together that cost least over
all lines are the metre; one odd line cannot outvote the others, since no line counts for more than a
certain sum. Where too many lines fit badly, the poem has no clear metre.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from statistics import median

from proofkit.reading.verse.poem import Foot, Metre
from proofkit.reading.verse.scansion import INVERTED, MOST_BEATS, Scan, Shape, Tread, scans
from proofkit.reading.verse.syllables import Word

# What the off syllables before the first beat and after the last cost, in each foot.
_LEAD: dict[Foot, dict[int, float]] = {
    Foot.IAMBIC: {1: 0.0, 0: 0.45, INVERTED: 0.3, 2: 0.5},
    Foot.TROCHAIC: {0: 0.0, 1: 0.5, INVERTED: 0.8, 2: 1.2},
    Foot.ANAPAESTIC: {2: 0.0, 1: 0.15, 0: 0.55, 3: 0.9},
    Foot.DACTYLIC: {0: 0.0, 1: 0.4, 2: 0.7},
    Foot.AMPHIBRACHIC: {1: 0.0, 0: 0.6, 2: 0.4},
}
_TRAIL: dict[Foot, dict[int, float]] = {
    Foot.IAMBIC: {0: 0.0, 1: 0.3, 2: 0.8},
    Foot.TROCHAIC: {1: 0.0, 0: 0.1, 2: 0.7},
    Foot.ANAPAESTIC: {0: 0.0, 1: 0.35, 2: 0.8},
    Foot.DACTYLIC: {2: 0.0, 1: 0.1, 0: 0.2},
    Foot.AMPHIBRACHIC: {1: 0.0, 0: 0.25, 2: 0.4},
}
_OTHER_ENDS = 2.0
_OFTEN = 0.2  # of the poem's lines; an end that is so common costs the reader next to nothing
_USUAL_END = 0.15
_LOOSE = 0.35  # a loose metre must save this much a line to be preferred
_CLIP = 2.5  # no line counts for more
_PER_GROUP = 1.0  # a pattern of more parts must earn each
_CLEAR = 1.0  # above this mean of clipped costs no metre is clear; in lines of four beats or fewer
_FITS = 1.6  # a line fits whose cost is at most this; likewise
_MOST_MISFITS = 0.25


@dataclass(frozen=True, slots=True, kw_only=True)
class Fit:
    """One line's cheapest reading with so many beats, in one foot."""

    cost: float
    pattern: str


LineFits = Mapping[int, Fit]  # by beats


@dataclass(frozen=True, slots=True, kw_only=True)
class _Ends:
    """What the off syllables before the first beat and after the last cost, by their number."""

    lead: Mapping[int, float]
    trail: Mapping[int, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Scanned:
    """A poem in its best metre: for each line its fits by beats, and how many beats it should have."""

    metre: Metre
    fits: tuple[LineFits, ...]
    expected: tuple[int, ...]
    costs: tuple[float, ...]
    clear: bool

    @property
    def usual_cost(self) -> float:
        """What a line of this poem costs as a rule."""
        return median(self.costs)


def scanned(
    stanzas: Sequence[Sequence[tuple[Word, ...]]], groupings: Sequence[Sequence[int]]
) -> Scanned | None:
    """A poem's stanzas, each of lines, each of words, in the metre that fits best.

    ``groupings`` are ways of saying which lines should be alike: a number for each line. None where
    there is no line.
    """
    lines = [line for stanza in stanzas for line in stanza]
    if not lines:
        return None
    by_tread = {tread: [scans(line, tread) for line in lines] for tread in Tread}
    usual = max(stanzas, key=len)
    tried = [
        (*_patterned(fits, grouping, foot, first=len(usual), loose=loose), extra, grouping)
        for foot in Foot
        for loose, fits, extra in _treads(by_tread, foot)
        for grouping in groupings
    ]
    _, poem, _, grouping = min(tried, key=lambda each: each[0] + each[2])
    foot, loose = poem.metre.foot, poem.metre.loose
    ends = _usual_ends(poem)
    fits = [_fits(line, ends) for line in by_tread[_tread(foot, loose=loose)]]
    return _patterned(fits, grouping, foot, first=len(usual), loose=loose)[1]


def _tread(foot: Foot, *, loose: bool) -> Tread:
    if loose:
        return Tread.LOOSE
    return Tread.DUPLE if foot.syllables == 2 else Tread.TRIPLE


def _treads(
    by_tread: Mapping[Tread, Sequence[Mapping[Shape, Scan]]], foot: Foot
) -> Iterator[tuple[bool, list[LineFits], float]]:
    """The lines in strict feet and in loose ones, and what the loose ones cost besides.

    Of two feet that fit a loose poem alike, the one that its strict reading prefers.
    """
    ends = _Ends(lead=_LEAD[foot], trail=_TRAIL[foot])
    strict = [_fits(line, ends) for line in by_tread[_tread(foot, loose=False)]]
    yield False, strict, 0.0
    stiff = sum(min((fit.cost for fit in line.values()), default=_CLIP) for line in strict)
    loose = [_fits(line, ends) for line in by_tread[Tread.LOOSE]]
    yield True, loose, _LOOSE * len(strict) + 0.02 * stiff


def _usual_ends(poem: Scanned) -> _Ends:
    """The prices of a foot's ends, where what the poem does often costs next to nothing."""
    foot = poem.metre.foot
    leads: Counter[int] = Counter()
    trails: Counter[int] = Counter()
    for line, count in zip(poem.fits, poem.expected, strict=True):
        if count in line:
            pattern = line[count].pattern
            inverted = foot.syllables == 2 and pattern.startswith("/xx/")
            leads[INVERTED if inverted else len(pattern) - len(pattern.lstrip("x"))] += 1
            trails[len(pattern) - len(pattern.rstrip("x"))] += 1
    return _Ends(lead=_made_usual(_LEAD[foot], leads), trail=_made_usual(_TRAIL[foot], trails))


def _made_usual(prices: Mapping[int, float], counts: Counter[int]) -> dict[int, float]:
    often = {end for end, count in counts.items() if count >= _OFTEN * counts.total()}
    return {end: min(price, _USUAL_END) if end in often else price for end, price in prices.items()}


def _fits(line: Mapping[Shape, Scan], ends: _Ends) -> LineFits:
    found: dict[int, Fit] = {}
    for shape, scan in line.items():
        cost = (
            scan.cost
            + ends.lead.get(shape.lead, _OTHER_ENDS)
            + ends.trail.get(shape.trail, _OTHER_ENDS)
        )
        if shape.beats not in found or cost < found[shape.beats].cost:
            found[shape.beats] = Fit(cost=round(cost, 3), pattern=scan.pattern)
    return found


def _patterned(
    fits: Sequence[LineFits],
    grouping: Sequence[int],
    foot: Foot,
    *,
    first: int,
    loose: bool,
) -> tuple[float, Scanned]:
    """Its price and the poem in one foot and grouping; ``first`` is the number of lines of a stanza."""
    groups: dict[int, list[LineFits]] = defaultdict(list)
    for line, group in zip(fits, grouping, strict=True):
        groups[group].append(line)
    beats = {group: _beats(lines) for group, lines in groups.items()}
    expected = tuple(beats[group] for group in grouping)
    costs = tuple(_cost(line, count) for line, count in zip(fits, expected, strict=True))
    clipped = sum(min(cost, _CLIP) for cost in costs)
    price = clipped + _PER_GROUP * (len(groups) - 1)
    longer = max(1.0, sum(expected) / len(expected) / 4)
    misfits = sum(cost > _FITS * longer for cost in costs) / len(costs)
    candidate = Scanned(
        metre=Metre(
            foot=foot,
            beats=beats_in_turn(expected[:first]),
            catalectic=_catalectic(foot, list(_endings(fits, expected))),
            loose=loose,
        ),
        fits=tuple(fits),
        expected=expected,
        costs=costs,
        clear=clipped / len(costs) <= _CLEAR * longer and misfits <= _MOST_MISFITS,
    )
    return price, candidate


def _cost(line: LineFits, beats: int) -> float:
    return line[beats].cost if beats in line else 2 * _CLIP


def _beats(lines: Sequence[LineFits]) -> int:
    """The number of beats that a group of lines has at the least cost; of two as good, the greater."""
    totals = {
        beats: sum(min(_cost(line, beats), _CLIP) for line in lines)
        for beats in range(1, MOST_BEATS + 1)
    }
    return min(totals, key=lambda beats: (round(totals[beats], 3), -beats))


def beats_in_turn(expected: Sequence[int]) -> tuple[int, ...]:
    """The beats of a stanza's lines without repetition: (4, 3) for 4, 3, 4, 3."""
    for period in (1, 2):
        turns = tuple(expected[:period])
        if all(beats == turns[at % period] for at, beats in enumerate(expected)):
            return turns
    return tuple(expected)


def _endings(fits: Sequence[LineFits], expected: Sequence[int]) -> Iterator[int]:
    for line, count in zip(fits, expected, strict=True):
        if count in line:
            pattern = line[count].pattern
            yield len(pattern) - len(pattern.rstrip("x"))


def _catalectic(foot: Foot, endings: Sequence[int]) -> bool:
    full = {Foot.TROCHAIC: 1, Foot.DACTYLIC: 2, Foot.AMPHIBRACHIC: 1}.get(foot, 0)
    return 2 * sum(ending < full for ending in endings) > len(endings)
