"""Two words written as one."""

from __future__ import annotations

import re
from functools import lru_cache

from proofkit.words.dictionary import Dictionary
from proofkit.words.frequency import zipf
from proofkit.words.suggest import candidates

# Pairs that are often run together.
_PAIRS = frozenset(
    re.split(
        r",\s+",
        """a bit, a few, a little, a lot, a while, all right, as if, as soon, as well, at all, at first,
        at last, at least, at once, by the, each other, even though, every time, good night, had to,
        has to, have to, in between, in case, in fact, in front, in order, in spite, in the, next to,
        no one, of course, on top, one day, out of, so that, such as, thank you, the other, to be,
        to the, up to, used to, very much, in love, on time""",
    )
)
# The small words of grammar beside which a space is easily left out.
_SMALL = frozenset(
    re.split(
        r"\s+",
        """an and are as at but by for from had has have he her his if in into is it its my not of on or
        our out she so that the their them then they this to up was we were when with you your""",
    )
)
# Before a verb these make a verb of their own: outsleep, upbuild.
_PREFIXES = frozenset({"out", "up", "by", "in", "on"})
_SMALL_ZIPF = 5.0
_OTHER_ZIPF = 3.7
_CHEAPER_SLIP = 0.7


def is_pair(left: str, right: str) -> bool:
    """Whether the two are often run together: a lot, in front."""
    return f"{left} {right}" in _PAIRS


@lru_cache(maxsize=4096)
def parts(word: str, known: Dictionary) -> tuple[str, str] | None:
    """The two words that ``word``, which the dictionary lacks, is run together from; or None.

    They must be a well-known pair, or one a small word of grammar and both frequent; and no single
    word may be a likelier reading.
    """
    lower = word.lower()
    if len(lower) < 4 or not lower.isalpha():
        return None
    halves = [(lower[:at], lower[at:]) for at in range(1, len(lower))]
    for left, right in halves:
        if is_pair(left, right):
            return left, right
    likely = [pair for pair in halves if _stand_together(*pair, known)]
    if not likely:
        return None
    best = max(likely, key=lambda pair: zipf(pair[0]) + zipf(pair[1]))
    return None if _is_one_word(lower, known) else best


def _stand_together(left: str, right: str, known: Dictionary) -> bool:
    """A small word and another: thegoose, andthen, tothe. Not "a", which verse puts before many a word."""
    small, other = (left, right) if left in _SMALL else (right, left)
    if small not in _SMALL or other not in known.words or len(other) < 2:
        return False
    if other not in _SMALL and min(len(left), len(right)) < 3 and small == right:
        return False
    if left in _PREFIXES and other not in _SMALL:
        return False
    return zipf(small) >= _SMALL_ZIPF and zipf(other) >= _OTHER_ZIPF and len(left + right) > 4


def _is_one_word(word: str, known: Dictionary) -> bool:
    near = [c for c in candidates(word, known) if " " not in c.word]
    return bool(near) and near[0].cost <= _CHEAPER_SLIP and zipf(near[0].word) >= 3
