"""Days, months and feasts spelt wrong with their capital on: Wensday, Febuary."""

from __future__ import annotations

from proofkit.words.frequency import zipf
from proofkit.words.lists import word_set
from proofkit.words.slips import slip
from proofkit.words.suggest import Candidate
from proofkit.words.vocabulary import Use

# Shorter ones (May, June, Easter) are near to too many names of people.
_NAMES = word_set("""
Monday Tuesday Wednesday Thursday Friday Saturday Sunday January February August September October
November December Christmas Halloween
""")
_LETTERS = 6
_MOST_TIMES = 3
_MOST_COST = 0.9
_MOST_COST_OF_LONG = 1.6
_LONG = 9


def day_or_month(use: Use) -> tuple[Candidate, ...]:
    """The day, month or feast that an unknown capital word must mean; nothing for any other word.

    Its cost is given as half: with so few names to choose from, a slip is the surer.
    """
    if use.lower or not use.word.isalpha() or len(use.word) < _LETTERS or use.count > _MOST_TIMES:
        return ()
    for name in _NAMES:
        most = _MOST_COST_OF_LONG if len(name) >= _LONG else _MOST_COST
        cost = slip(use.word, name.lower())
        if use.word[0] == name[0].lower() and cost <= most:
            return (Candidate(word=name, cost=cost / 2, score=cost - zipf(name)),)
    return ()
