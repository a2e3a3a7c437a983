"""How likely a word is after the three before it, from counts of runs of up to four words."""

from __future__ import annotations

import math
from collections.abc import Sequence

from proofkit.words.context.table import Table

# How many times a beginning must have been met for its own counts to weigh as much as the shorter
# run's (Dirichlet smoothing: MacKay and Peto 1995), by how many words it has.
TRUST = (0.0, 30.0, 8.0, 3.0)
_STEPS = 12  # a count is kept as the twelfth parts of its power of two: within 3 %
_UNKNOWN = 1e-7
_MOST_REMEMBERED = 100_000
LONGEST = 4


def as_byte(count: int) -> int:
    """A count as it is kept, 1 to 255."""
    return min(255, round(_STEPS * math.log2(count)) + 1)


_COUNTS = (0.0, *(2 ** ((byte - 1) / _STEPS) for byte in range(1, 256)))


class Counts:
    """The runs of a table. ``total`` is how many tokens they were counted in."""

    __slots__ = ("_remembered", "_table", "_total")

    def __init__(self, table: Table, total: int) -> None:
        self._table = table
        self._total = total
        self._remembered: dict[str, float] = {}

    @property
    def total(self) -> int:
        """How many tokens the runs were counted in."""
        return self._total

    def count(self, run: str) -> float:
        """About how often a run (words parted by single spaces) was met; 0 where it is not kept."""
        found = self._remembered.get(run)
        if found is None:
            if len(self._remembered) > _MOST_REMEMBERED:
                self._remembered.clear()
            found = self._remembered[run] = _COUNTS[self._table.get(run)]
        return found

    def share(self, words: Sequence[str], at: int) -> float:
        """How likely the word at ``at`` is after the words before it, 0 to 1."""
        share = self.count(words[at]) / self._total or _UNKNOWN
        for length in range(1, LONGEST):
            beginning = " ".join(words[at - length : at])
            times = self.count(beginning)
            if not times:
                break
            run = self.count(f"{beginning} {words[at]}")
            trust = TRUST[length]
            share = (run + trust * share) / (max(times, run) + trust)
        return share

    def log_likelihood(self, words: Sequence[str], at: int) -> float:
        """How well the word at ``at`` fits: the log of its share and of the three after it that see it."""
        return sum(math.log(self.share(words, place)) for place in range(at, at + LONGEST))
