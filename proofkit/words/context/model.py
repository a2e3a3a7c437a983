"""Which of two words is meant here: weighed neighbours and counted runs of words, added up.

For each pair of words a logistic regression was trained on their neighbours; beside it stands a model
of runs of up to four words. Both give log odds; the sum, with the second's share fitted on books that
neither had seen, says how much likelier the other word is. How sure is sure enough differs from word
to word and stands in ``word-choice.tsv``, with what was measured there. ``make_word_choice.py`` in
``wordlists/`` makes both files.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache

from proofkit.words.context.counts import LONGEST, Counts
from proofkit.words.context.features import feature_names
from proofkit.words.context.table import Table
from proofkit.words.context.tokens import Tokens, class_of
from proofkit.words.data import wordlist

MIDDLE, SCALE = 128, 20  # a weight is kept in twentieths, from -6.35 to 6.35
RUNS_SHARE = 0.5
_LEAST_RUNS, _LEAST_NEIGHBOURS = 1.5, 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """One word written where another may be meant.

    ``bias``    the pair's own log odds for ``meant``, before any neighbour is looked at
    ``margin``  the least log odds for ``meant`` at which to speak
    ``found``   the share of planted slips of this kind that were found at that margin
    ``false``   how often, in a million words of books not trained on, ``written`` was right and was
                taken for a slip
    """

    written: str
    meant: str
    bias: float
    margin: float = 0.0
    found: float = 0.0
    false: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Doubt:
    """The word at token ``at``, for which another seems meant, by ``odds`` (natural log)."""

    choice: Choice
    at: int
    odds: float

    @property
    def excess(self) -> float:
        """By how much the odds are above the margin."""
        return self.odds - self.choice.margin


class ContextModel:
    """The words around a word, as 16 million words of children's novels use them."""

    def __init__(self, table: Table, total: int, choices: Sequence[Choice]) -> None:
        self.counts = Counts(table, total)
        self._table = table
        self._tags: dict[str, str] = {}
        self._choices: dict[str, list[Choice]] = {}
        for choice in choices:
            self._choices.setdefault(choice.written, []).append(choice)

    def choices(self, word: str) -> Sequence[Choice]:
        """What the word may be written for."""
        return self._choices.get(word, ())

    def classed(self, words: Sequence[str]) -> list[str]:
        """The tokens, those met too seldom replaced by their class."""
        return [word if self.counts.count(word) else class_of(word) for word in words]

    def odds(self, words: Sequence[str], at: int, choice: Choice) -> float:
        """The log odds that ``choice.meant`` stands right at ``at``, rather than ``choice.written``.

        0 unless both votes are for ``meant``: of real slips hardly one in fifty lacks either, of false
        alarms in today's text every second one.
        """
        return self._odds(words, at, choice, self._fit(words, at, choice.written))

    def _odds(self, words: Sequence[str], at: int, choice: Choice, written: float) -> float:
        """Likewise, where it is known how well the written word fits."""
        runs = self._fit(words, at, choice.meant) - written
        if runs < _LEAST_RUNS:
            return 0.0
        neighbours = self.neighbour_odds(words, at, choice)
        return 0.0 if neighbours < _LEAST_NEIGHBOURS else neighbours + RUNS_SHARE * runs

    def neighbour_odds(self, words: Sequence[str], at: int, choice: Choice) -> float:
        """What the weights of the neighbours say."""
        first, second = sorted((choice.written, choice.meant))
        get, prefix = self._table.get, f"{first}/{second} "
        tags = [self.tag(word) for word in words[at - 3 : at + 4]]
        total = 0
        for name in feature_names(words, tags, at):
            byte = get(prefix + name)
            if byte:
                total += byte - MIDDLE
        return choice.bias + (total if choice.meant == first else -total) / SCALE

    def _fit(self, words: Sequence[str], at: int, word: str) -> float:
        window = list(words[at - 3 : at + 4])
        window[3] = word
        return self.counts.log_likelihood(window, 3)

    def tag(self, word: str) -> str:
        """The number of the word's most frequent part of speech; 0 where it isn't known."""
        found = self._tags.get(word)
        if found is None:
            found = self._tags[word] = str(self._table.get(f"^{word}"))
        return found

    def doubts(self, tokens: Tokens) -> Iterator[Doubt]:
        """Each word for which another seems meant, less those beside a surer one.

        A wrong word makes its neighbours look wrong, as far as runs of words reach.
        """
        doubts = list(self._all_doubts(tokens))
        for doubt in doubts:
            near = (other for other in doubts if 0 < abs(other.at - doubt.at) < LONGEST)
            if all(other.odds <= doubt.odds for other in near):
                yield doubt

    def _all_doubts(self, tokens: Tokens) -> Iterator[Doubt]:
        words = self.classed(tokens.words)
        for at, word in enumerate(words):
            if tokens.capital[at] or word not in self._choices:
                continue
            written = self._fit(words, at, word)
            sure = [
                Doubt(choice=choice, at=at, odds=odds)
                for choice in self._choices[word]
                if (odds := self._odds(words, at, choice, written)) > choice.margin
            ]
            if sure:
                yield max(sure, key=lambda doubt: doubt.excess)


@lru_cache(maxsize=1)
def context_model() -> ContextModel:
    """The model that comes with proofkit."""
    lines = wordlist("word-choice.tsv").read_text("utf-8").splitlines()
    total = next(int(line.split()[-1]) for line in lines if line.startswith("# tokens"))
    choices = [_choice(line.split("\t")) for line in lines if not line.startswith("#")]
    return ContextModel(Table(wordlist("word-choice.bin")), total, choices)


def _choice(row: Sequence[str]) -> Choice:
    written, meant, *numbers = row
    bias, margin, found, false = map(float, numbers)
    return Choice(written=written, meant=meant, bias=bias, margin=margin, found=found, false=false)
