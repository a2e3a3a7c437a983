"""How much better a small word, put between two words, makes them fit: the counts' vote.

It is asked only where grammar has found a gap. Anywhere else a sentence is free to be new.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Sequence

from proofkit.analysis import Analysis
from proofkit.book import Page
from proofkit.words.context.counts import LONGEST
from proofkit.words.context.model import context_model
from proofkit.words.context.tokens import tokens_of


class Gaps:
    """A page's words as they were counted in novels for children."""

    def __init__(self, page: Page, analysis: Analysis) -> None:
        tokens = tokens_of(page.prose, analysis.vocabulary.is_name)
        self._words = context_model().classed(tokens.words)
        self._starts = tokens.starts

    def gain(self, at: int, word: str) -> float:
        """The log of how much likelier the text is with the word before the character ``at``."""
        place = bisect_left(self._starts, at, LONGEST)
        before, after = self._words[place - LONGEST : place], self._words[place : place + LONGEST]
        counts = context_model().counts
        plain, filled = [*before, *after], [*before, word, *after]
        without = sum(math.log(counts.share(plain, i)) for i in _seeing(before, 3))
        return sum(math.log(counts.share(filled, i)) for i in _seeing(before, 4)) - without


def _seeing(before: Sequence[str], words: int) -> range:
    return range(len(before), len(before) + words)
