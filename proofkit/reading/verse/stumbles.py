"""The lines that leave the metre of their poem, and how.

A line stumbles where it costs the reader clearly more than the poem's lines do as a rule. What is wrong
is told by trying: if it has the right number of syllables and a word that would be turned about (ALone),
that word trips; if it goes well with other beats, it is short or long; else it does not fall in at all.
"""

from __future__ import annotations

from collections.abc import Sequence
from statistics import median_low

from proofkit.book import Span
from proofkit.reading.verse.layout import Set
from proofkit.reading.verse.metre import Fit, LineFits, Scanned
from proofkit.reading.verse.poem import Foot, Stumble, StumbleKind
from proofkit.reading.verse.syllables import PRIMARY, WEAK, Word

FEWEST_LINES = 12
MOST = 0.125  # of a poem's lines; where more stumble, that is not its metre
LEAST = 1.4  # above what a line of the poem costs as a rule
_ABOVE_ROUGH = 0.9  # above what one line in seven of the poem costs
_ROUGH = 0.85
_BETTER = 1.0  # another number of beats must save this much to be the answer
_ADVANTAGE = 0.8  # weight of what it saves
_PER_SYLLABLE = 0.9  # for each syllable outside what all lines alike have, but for the first
_FIRST_SYLLABLE = 0.3
_FEWEST_ALIKE = 4
_RARE = 1.0  # for each foot of another length, in a poem that has next to none
_RARELY = 0.15  # of the poem's feet; where so many are odd nobody minds one more
_UNREADABLE = 6.0
_LEVEL = 0.2  # of the lines alike have the same number of syllables
# Off syllables before the first beat, as the foot has them.
_LEADS = {
    Foot.IAMBIC: 1,
    Foot.TROCHAIC: 0,
    Foot.ANAPAESTIC: 2,
    Foot.DACTYLIC: 0,
    Foot.AMPHIBRACHIC: 1,
}


def stumbles(
    lines: Sequence[Set], words: Sequence[Sequence[Word]], poem: Scanned, alike: Sequence[int]
) -> tuple[Stumble | None, ...]:
    """For each line of a poem whether it stumbles. ``alike`` numbers the lines that should be alike.

    None at all in a poem of fewer than FEWEST_LINES: it teaches no step that a line could break.
    """
    if len(lines) < FEWEST_LINES:
        return (None,) * len(lines)
    troubles = _troubles(poem, alike)
    spoken = [_spoken(line) for line in words]
    found: list[Stumble | None] = []
    for at, line in enumerate(lines):
        surprise = _surprise(troubles, at)
        if surprise:
            peers = [count for count, own in zip(spoken, alike, strict=True) if own == alike[at]]
            level = peers.count(spoken[at]) > _LEVEL * len(peers)
            more = 0 if level else spoken[at] - median_low(peers)
            found.append(_stumble(line, words[at], poem, at, surprise, more, level=level))
        else:
            found.append(None)
    return tuple(found)


def _troubles(poem: Scanned, alike: Sequence[int]) -> list[float]:
    """What each line costs its reader in all."""
    counts = [_syllables(poem, at) for at in range(len(alike))]
    odd = [_odd_feet(poem, at) for at in range(len(alike))]
    rarity = _RARE * max(0.0, 1 - sum(odd) / sum(poem.expected) / _RARELY)
    troubles = []
    for at in range(len(alike)):
        others = [counts[i] for i in range(len(alike)) if alike[i] == alike[at] and i != at]
        trouble = _trouble(poem, at) + _strangeness(_outside(counts[at], others))
        troubles.append(trouble + rarity * odd[at])
    return troubles


def _spoken(words: Sequence[Word]) -> int:
    return sum(len(word.readings[0].syllables) for word in words)


def _trouble(poem: Scanned, at: int) -> float:
    """What the line costs, and more if it would go better with other beats."""
    natural = _natural(poem.fits[at])
    saved = poem.costs[at] - natural.cost if natural else 0.0
    return poem.costs[at] + _ADVANTAGE * saved


def _odd_feet(poem: Scanned, at: int) -> int:
    """How many feet of the line have a syllable more or less than the poem's, but for the first."""
    fit = poem.fits[at].get(poem.expected[at])
    if fit is None or poem.metre.loose:
        return 0
    gaps = fit.pattern.strip("x").split("/")[1:-1]
    if poem.metre.foot.syllables == 2 and fit.pattern.startswith("/xx/"):
        gaps = gaps[1:]
    odd = [len(gap) for gap in gaps if len(gap) != poem.metre.foot.syllables - 1]
    # One light syllable more in a line of iambs is a skip, not a stumble.
    return len(odd) - (poem.metre.foot.syllables == 2 and 2 in odd)


def _surprise(troubles: list[float], at: int) -> float:
    """How far a line's trouble stands out from its poem's; 0 where it does not stand out enough.

    A poem that is rough in many places has taught its reader to take it easy.
    """
    others = sorted(troubles[:at] + troubles[at + 1 :])
    usual, rough = others[len(others) // 2], others[int(_ROUGH * len(others))]
    surprise = troubles[at] - usual
    return surprise if surprise >= LEAST and troubles[at] >= rough + _ABOVE_ROUGH else 0.0


def _syllables(poem: Scanned, at: int) -> int:
    fit = _natural(poem.fits[at])
    return len(fit.pattern) if fit else 0


def _natural(fits: LineFits) -> Fit | None:
    return min(fits.values(), key=lambda fit: fit.cost, default=None)


def _outside(count: int, others: Sequence[int]) -> int:
    """By how many syllables a line falls outside what the lines like it have."""
    if len(others) < _FEWEST_ALIKE:
        return 0
    return max(min(others) - count, count - max(others), 0)


def _strangeness(outside: int) -> float:
    return _FIRST_SYLLABLE + _PER_SYLLABLE * (outside - 1) if outside else 0.0


def _stumble(
    line: Set,
    words: Sequence[Word],
    poem: Scanned,
    at: int,
    surprise: float,
    more: int,
    *,
    level: bool,
) -> Stumble:
    """What is wrong with a line, which has so many syllables ``more`` than the lines like it.

    ``level``: as many as many of them.
    """
    fits, expected = poem.fits[at], poem.expected[at]
    natural = min(fits, key=lambda beats: fits[beats].cost, default=0)
    tripping = _tripping(words, poem.metre.foot, expected) if level else None
    span = line.span
    if tripping:
        kind, natural = StumbleKind.STRESS, expected
        span = _word_span(line, tripping)
    elif natural != expected and _saves(fits, natural, expected):
        kind = StumbleKind.SHORT if natural < expected else StumbleKind.LONG
    elif feet := int(more / poem.metre.foot.syllables):
        kind = StumbleKind.LONG if feet > 0 else StumbleKind.SHORT
        natural = max(0, expected + feet)
    else:
        kind, natural = StumbleKind.CROWDED, expected
    return Stumble(
        kind=kind, span=span, beats=natural, expected=expected, surprise=round(surprise, 2)
    )


def _saves(fits: LineFits, natural: int, expected: int) -> bool:
    cost = fits[expected].cost if expected in fits else _UNREADABLE
    return natural in fits and fits[natural].cost <= cost - _BETTER


def _tripping(words: Sequence[Word], foot: Foot, beats: int) -> Word | None:
    """The word that is turned about, where the line has the syllables that the metre wants of it."""
    pattern = _regular(foot, beats, _spoken(words))
    for word, own in _laid(words, pattern):
        turned = zip(word.readings[0].syllables, own, strict=False)
        if len(own) == len(word.readings[0].syllables) and {
            PRIMARY + "x",
            WEAK + "/",
        } <= {kind + mark for kind, mark in turned}:
            return word
    return None


def _regular(foot: Foot, beats: int, syllables: int) -> str:
    """The pattern of so many beats and syllables without any licence; "" where there is none."""
    size = foot.syllables
    for lead in sorted(range(size), key=lambda lead: abs(lead - _LEADS[foot])):
        trail = syllables - lead - (beats - 1) * size - 1
        if 0 <= trail < size:
            return "x" * lead + ("/" + "x" * (size - 1)) * (beats - 1) + "/" + "x" * trail
    return ""


def _laid(words: Sequence[Word], pattern: str) -> list[tuple[Word, str]]:
    """Each word with its part of the pattern; elisions are tried so that the whole is used up."""
    if not words:
        return []
    for reading in words[0].readings:
        length = len(reading.syllables)
        if length <= len(pattern):
            rest = _laid(words[1:], pattern[length:])
            if len(rest) == len(words) - 1 and (rest or length == len(pattern)):
                return [(words[0], pattern[:length]), *rest]
    return []


def _word_span(line: Set, word: Word) -> Span:
    start = line.span.start
    return Span(page=line.span.page, start=start + word.start, end=start + word.end)
