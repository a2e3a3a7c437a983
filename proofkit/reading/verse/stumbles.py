"""The lines that leave the metre of their poem, and how.

A line stumbles where it costs the reader clearly more than the poem's lines do as a rule. What is wrong
is told by trying: if it goes well with other beats, it is short or long; if one word of two syllables
or more has its stress off the beat, that word trips; else too many syllables crowd between two beats.
"""

from __future__ import annotations

from collections.abc import Sequence

from proofkit.book import Span
from proofkit.reading.verse.layout import Set
from proofkit.reading.verse.metre import Fit, LineFits, Scanned
from proofkit.reading.verse.poem import Stumble, StumbleKind
from proofkit.reading.verse.syllables import PRIMARY, Word

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


def stumbles(
    lines: Sequence[Set], words: Sequence[Sequence[Word]], poem: Scanned, alike: Sequence[int]
) -> tuple[Stumble | None, ...]:
    """For each line of a poem whether it stumbles. ``alike`` numbers the lines that should be alike.

    None at all in a poem of fewer than FEWEST_LINES: it teaches no step that a line could break.
    """
    if len(lines) < FEWEST_LINES:
        return (None,) * len(lines)
    counts = [_syllables(poem, at) for at in range(len(lines))]
    odd = [_odd_feet(poem, at) for at in range(len(lines))]
    rarity = _RARE * max(0.0, 1 - sum(odd) / sum(poem.expected) / _RARELY)
    troubles: list[float] = []
    for at in range(len(lines)):
        others = [counts[i] for i in range(len(lines)) if alike[i] == alike[at] and i != at]
        trouble = _trouble(poem, at) + _strangeness(_outside(counts[at], others))
        troubles.append(trouble + rarity * odd[at])
    return tuple(
        _stumble(lines[at], words[at], poem.fits[at], poem.expected[at], surprise)
        if (surprise := _surprise(troubles, at))
        else None
        for at in range(len(lines))
    )


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
    line: Set, words: Sequence[Word], fits: LineFits, expected: int, surprise: float
) -> Stumble:
    here = fits.get(expected)
    cost = here.cost if here else _UNREADABLE
    natural = min(fits, key=lambda beats: fits[beats].cost, default=0)
    if natural and natural != expected and fits[natural].cost <= cost - _BETTER:
        kind = StumbleKind.SHORT if natural < expected else StumbleKind.LONG
        span = line.span
    else:
        tripping = _tripping(words, here.pattern) if here else None
        kind = StumbleKind.STRESS if tripping else StumbleKind.CROWDED
        span = _word_span(line, tripping) if tripping else line.span
        natural = expected
    return Stumble(
        kind=kind, span=span, beats=natural, expected=expected, surprise=round(surprise, 2)
    )


def _tripping(words: Sequence[Word], pattern: str) -> Word | None:
    """The word whose stressed syllable is off the beat, if the pattern can be laid under the words."""
    for word, own in _laid(words, pattern):
        for reading in word.readings:
            if len(reading.syllables) == len(own) and any(
                kind == PRIMARY and mark == "x"
                for kind, mark in zip(reading.syllables, own, strict=True)
            ):
                return word
    return None


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
