"""The rhymes that a poem's scheme asks for, and that fail.

A rhyme is doubted only where its like are kept: the couplets of a poem are alike, and so are the second
and fourth lines of its stanzas; that the first and third lines rhyme is a luxury, and they must have
done so often before one that does not is doubted.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace

from proofkit.book import Span
from proofkit.reading.verse.layout import Block, Set
from proofkit.reading.verse.poem import FailedRhyme, RhymeKind
from proofkit.reading.verse.scheme import Kinds, Schemed, pairs_of
from proofkit.reading.verse.stumbles import FEWEST_LINES
from proofkit.reading.verse.syllables import WORD

_TO_ONE = 4  # rhymes kept to one that fails, where several fail
_FEWEST_FIRST_RHYMES = 5
_FEWEST_RHYMES = 4  # in the whole poem, where only one other stands in the same place
_FIRST_RHYMES = (2, 0)


def failed_rhymes(
    blocks: Sequence[Block], kinds: Sequence[Kinds], form: Schemed
) -> tuple[FailedRhyme, ...]:
    """The rhymes of the form that are not there, where the rhymes of the same place elsewhere are."""
    if not form.clear or sum(map(len, blocks)) < FEWEST_LINES:
        return ()
    kept: Counter[tuple[int, int]] = Counter()
    failed: list[tuple[tuple[int, int], FailedRhyme]] = []
    for block, own in zip(blocks, kinds, strict=True):
        for first, second in pairs_of(form.forms[len(block)]):
            place = _place(first, second)
            if (first, second) not in own:
                failed.append((place, _failure(block[first], block[second])))
            elif own[first, second] is not RhymeKind.IDENTICAL:
                kept[place] += 1
    failures = Counter(place for place, _ in failed)
    return tuple(failure for place, failure in failed if _doubted(place, kept, failures[place]))


def _doubted(place: tuple[int, int], kept: Counter[tuple[int, int]], failures: int) -> bool:
    if place == _FIRST_RHYMES and kept[place] < _FEWEST_FIRST_RHYMES:
        return False
    if failures > 1:
        return kept[place] >= _TO_ONE * failures
    return kept[place] >= 2 or (kept[place] == 1 and kept.total() >= _FEWEST_RHYMES)


def _place(first: int, second: int) -> tuple[int, int]:
    """Couplets are alike wherever they stand; of alternate rhymes the first and the second are not."""
    distance = second - first
    return distance, first % 2 if distance == 2 else 0


def _failure(first: Set, second: Set) -> FailedRhyme:
    partner_span, partner = _last_word(first)
    span, word = _last_word(second)
    return FailedRhyme(span=span, word=word, partner_span=partner_span, partner=partner)


def _last_word(line: Set) -> tuple[Span, str]:
    *_, last = WORD.finditer(line.text)
    start = line.span.start
    span = replace(line.span, start=start + last.start(), end=start + last.end())
    return span, last.group()
