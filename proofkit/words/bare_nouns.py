"""How likely English leaves a noun without an article: *by boat*, *in bed*, but never *saw boat*.

The figures of ``wordlists/bare-nouns.tsv`` say how often a noun stands bare, and how often anything does
after such a word, before such a word and with such an adjective. They are put together as if each spoke
for itself (naive Bayes); where the very pair of a noun and the word before it was met, that counts most.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from proofkit.words.data import wordlist
from proofkit.words.noun_phrases import PLAIN, NounPhrase

_TRUST = 4.0  # times; what is met less often weighs little
_PAIR_TRUST = 5.0


@dataclass(frozen=True, slots=True, kw_only=True)
class BareNouns:
    """Counts, (bare, with an article), by what was counted and the word."""

    counts: Mapping[tuple[str, str], tuple[int, int]]
    usual: float

    def knows(self, noun: str) -> bool:
        """Whether the noun was met often enough to say anything of it."""
        return ("noun", noun) in self.counts

    def odds(self, phrase: NounPhrase) -> float:
        """The natural log of the odds that the phrase needs no article, from all its parts."""
        total = self.usual
        for kind, word in (
            ("noun", phrase.noun),
            ("before", phrase.before),
            ("after", phrase.after),
            ("describing", phrase.describing),
        ):
            total += self._leaning(kind, word)
        if phrase.describing == PLAIN:
            total = self._seen(total, "pair", f"{phrase.before} {phrase.noun}")
        return self._seen(total, "phrase", f"{phrase.describing} {phrase.noun}")

    def _seen(self, odds: float, kind: str, words: str) -> float:
        """The odds, corrected by how often just these words were met."""
        counted = self.counts.get((kind, words))
        if counted is None:
            return odds
        share = 1 / (1 + math.exp(-odds))
        bare, determined = counted
        return math.log(bare + _PAIR_TRUST * share) - math.log(
            determined + _PAIR_TRUST * (1 - share)
        )

    def _leaning(self, kind: str, word: str) -> float:
        """How much more, or less, than the average such a word stands with a bare noun."""
        bare, determined = self.counts.get((kind, word), (0, 0))
        usual = 1 / (1 + math.exp(-self.usual))
        odds = math.log(bare + _TRUST * usual) - math.log(determined + _TRUST * (1 - usual))
        return odds - self.usual


@lru_cache(maxsize=1)
def bare_nouns() -> BareNouns:
    """The figures that come with proofkit."""
    counts = {}
    for line in wordlist("bare-nouns.tsv").read_text("utf-8").splitlines():
        if not line.startswith("#"):
            kind, word, bare, determined = line.split("\t")
            counts[kind, word] = int(bare), int(determined)
    nouns = [count for (kind, _), count in counts.items() if kind == "noun"]
    bare, determined = (sum(column) for column in zip(*nouns, strict=True))
    return BareNouns(counts=counts, usual=math.log(bare / determined))
