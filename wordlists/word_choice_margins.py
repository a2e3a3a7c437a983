"""How sure is sure enough, word by word: set on books that were kept out of counts and weights.

For each choice (a word written, another meant) a margin trades slips found against false alarms: of all
margins the one is taken that makes share found - PRICE x false alarms in a million words greatest, with
one price for all choices, such that all together stay within a number of false alarms. A slip that
writers make often counts as OFTEN others.
"""

from __future__ import annotations

import os
from collections import defaultdict
from collections.abc import Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import replace
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from proofkit.book import Book
from proofkit.words.context.model import Choice, ContextModel
from proofkit.words.context.pairs import frequent_confusions
from proofkit.words.context.table import Table
from proofkit.words.context.tokens import REACH, tokens_of
from proofkit.words.vocabulary import vocabulary_of

ALLOWED = 400  # false alarms in a million words, of all choices together
# No margin is lower: today's text is further from the training text than these books are.
LEAST = 2.0
# How many places of its own a word's record needs to weigh as much as that of all words together: one
# false alarm for a word met a hundred times says little.
TRUST = 2000
OFTEN = 3
MOST_PLANTED = 80  # of one kind in one book

MARGINS = np.arange(LEAST, 16, 0.1)

Odds = dict[tuple[str, str], list[float]]  # by the word written and the word meant


def with_margins(books: list[Book], choices: list[Choice], total: int) -> list[Choice]:
    """The choices with their margins and what was found and false at them."""
    false: Odds = defaultdict(list)
    planted: Odds = defaultdict(list)
    jobs = len(books)
    with ProcessPoolExecutor(2, initializer=os.nice, initargs=(5,)) as pool:
        for here in pool.map(_odds_in, books, [choices] * jobs, [total] * jobs):
            for odds, more in zip((false, planted), here, strict=True):
                for key, values in more.items():
                    odds[key] += values
    millions = sum(book.words for book in books) / 1e6
    everywhere = _share_above(np.array([odds for values in false.values() for odds in values]))
    curves = [
        _Curve(
            false[c.written, c.meant],
            planted[c.written, c.meant],
            everywhere,
            millions,
            OFTEN if (c.written, c.meant) in frequent_confusions() else 1,
        )
        for c in choices
    ]
    low, high = 1e-4, 10.0
    for _ in range(40):
        price = (low * high) ** 0.5
        if sum(curve.best(price)[2] for curve in curves) > ALLOWED:
            low = price
        else:
            high = price
    best = [curve.best(high) for curve in curves]
    return [
        replace(choice, margin=round(margin, 2), found=round(share, 3), false=round(false, 2))
        for choice, (margin, share, false) in zip(choices, best, strict=True)
        if share > 0.02
    ]


class _Curve:
    """What one choice finds and what it raises falsely, at each margin."""

    def __init__(
        self,
        false: list[float],
        planted: list[float],
        everywhere: NDArray[np.float64],
        millions: float,
        weight: float,
    ) -> None:
        self.weight = weight
        self.found = _share_above(np.array(planted))
        own, places = _share_above(np.array(false)), len(false)
        share = (own * places + everywhere * TRUST) / (places + TRUST)
        self.false = share * places / millions

    def best(self, price: float) -> tuple[float, float, float]:
        """The margin at that price of a false alarm, with the share found and the false alarms."""
        at = int(np.argmax(self.weight * self.found - price * self.false))
        return float(MARGINS[at]), float(self.found[at]), float(self.false[at])


def _share_above(values: NDArray[np.float64]) -> NDArray[np.float64]:
    """For each of MARGINS the share of values above it."""
    above = len(values) - np.searchsorted(np.sort(values), MARGINS, side="right")
    return above / max(1, len(values))


def _odds_in(book: Book, choices: Sequence[Choice], total: int) -> tuple[Odds, Odds]:
    """The odds of each choice where its word was written rightly, and where it was planted."""
    model = ContextModel(Table(Path(__file__).with_name("word-choice.bin")), total, choices)
    slips: dict[str, list[Choice]] = defaultdict(list)
    for choice in choices:
        slips[choice.meant].append(choice)
    false: Odds = defaultdict(list)
    planted: Odds = defaultdict(list)
    for words, at in _places(book, model):
        for choice in model.choices(words[at]):
            false[choice.written, choice.meant].append(model.odds(words, at, choice))
        for slip in slips[words[at]]:
            if len(planted[slip.written, slip.meant]) < MOST_PLANTED:
                planted[slip.written, slip.meant].append(model.odds(words, at, slip))
    return dict(false), dict(planted)


def _places(book: Book, model: ContextModel) -> Iterator[tuple[list[str], int]]:
    """Every word of the book that a slip may touch: its paragraph's tokens and its place there."""
    is_name = vocabulary_of(book).is_name
    for page in book.pages:
        for part in page.paragraphs:
            tokens = tokens_of(page.text, is_name, part.start, part.end)
            words = model.classed(tokens.words)
            for at in range(REACH, len(words) - REACH):
                if not tokens.capital[at]:
                    yield words, at
