"""Which runs of up to four words the model keeps, and how often each was met."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from word_choice_corpus import Row

from proofkit.words.context.counts import TRUST
from proofkit.words.context.pairs import confusion_pairs

LONGEST = 4
FEWEST = (0, 1, 2, 3, 3)  # a run of n words met less often is not looked at
# Small words that other checks may ask about are kept beside the members of pairs.
SMALL = "a the in at on with and for from into his her".split()

Codes = NDArray[np.uint64]
Counts = NDArray[np.int64]


@dataclass(frozen=True, slots=True, kw_only=True)
class Runs:
    """All runs of one length: each packed into 64 bits, sorted, and how often it was met."""

    codes: Codes
    counts: Counts

    def of(self, codes: Codes) -> Counts:
        """How often each of ``codes`` was met; 0 for those that aren't here."""
        at = np.minimum(np.searchsorted(self.codes, codes), len(self.codes) - 1)
        return np.where(self.codes[at] == codes, self.counts[at], 0)


def counted(row: Row) -> list[Runs]:
    """Runs of one word, of two, and so on."""
    return [_runs(row.ids, length) for length in range(1, LONGEST + 1)]


def kept(row: Row, runs: list[Runs], room: int) -> list[Runs]:
    """The ``room`` runs that change most what the model thinks, and the beginnings they need."""
    members = _members(row)
    gains, shares = [np.array([])], [runs[0].counts / runs[0].counts.sum()]
    for n in range(1, LONGEST):
        share, gain = _gain(runs, n, shares[-1])
        gain[~_holds(runs[n].codes, n + 1, members) | (runs[n].counts < FEWEST[n + 1])] = 0
        shares.append(share)
        gains.append(gain)
    everything = np.concatenate(gains)
    least = -np.sort(-everything)[min(room, len(everything)) - 1]
    chosen = [np.ones(len(runs[0].codes), dtype=bool)]
    chosen += [gain > max(least, 0) for gain in gains[1:]]
    for n in range(LONGEST - 1, 1, -1):
        beginnings = np.unique(runs[n].codes[chosen[n]] >> np.uint64(16))
        chosen[n - 1] |= np.isin(runs[n - 1].codes, beginnings)
    return [Runs(codes=r.codes[c], counts=r.counts[c]) for r, c in zip(runs, chosen, strict=True)]


def words_of(row: Row, code: int, length: int) -> str:
    """The run that a code stands for."""
    places = [code >> (16 * (length - 1 - i)) & 0xFFFF for i in range(length)]
    return " ".join(row.words[place] for place in places)


def _runs(ids: NDArray[np.uint16], length: int) -> Runs:
    codes = np.zeros(len(ids) - length + 1, dtype=np.uint64)
    for i in range(length):
        codes = (codes << np.uint64(16)) | ids[i : len(ids) - length + 1 + i].astype(np.uint64)
    unique, counts = np.unique(codes, return_counts=True)
    enough = counts >= (2 if length > 2 else 1)
    return Runs(codes=unique[enough], counts=counts[enough])


def _gain(
    runs: list[Runs], n: int, lower: NDArray[np.float64]
) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """For runs of n + 1 words: the share of the last after the others, and what keeping each is worth."""
    here, below = runs[n], runs[n - 1]
    tail = here.codes & np.uint64((1 << (16 * n)) - 1)
    place = np.minimum(np.searchsorted(below.codes, tail), len(below.codes) - 1)
    backed = np.where(below.codes[place] == tail, lower[place], 1e-7)
    context = np.maximum(below.of(here.codes >> np.uint64(16)), here.counts)
    trust = TRUST[n]
    share = (here.counts + trust * backed) / (context + trust)
    without = trust * backed / (context + trust)
    return share, (here.counts - 0.3) * np.log(share / without)


def _members(row: Row) -> NDArray[np.bool_]:
    wanted = {word for pair in confusion_pairs() for word in pair} | set(SMALL)
    return np.array([word in wanted for word in row.words])


def _holds(codes: Codes, length: int, members: NDArray[np.bool_]) -> NDArray[np.bool_]:
    holds = np.zeros(len(codes), dtype=bool)
    for i in range(length):
        holds |= members[(codes >> np.uint64(16 * i)) & np.uint64(0xFFFF)]
    return holds
