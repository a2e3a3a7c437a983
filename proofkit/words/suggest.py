"""What an author probably meant by a word that the dictionary lacks."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache

from rapidfuzz import process
from rapidfuzz.distance import OSA

from proofkit.words.dictionary import Dictionary
from proofkit.words.frequency import frequent_words, zipf
from proofkit.words.slips import slip

_MOST_LETTERS = 24
_SUGGESTIONS = 5
# One step of a slip weighs as much as this many powers of ten of frequency.
_STEP = 3.0
# A word seen this seldom is as good as unseen.
_LEAST_ZIPF = 1.0
_SPLIT = 1.1
_FREQUENT = 4.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Candidate:
    """A reading of an unknown word: ``cost`` is that of the slip, ``score`` is lower for better ones."""

    word: str
    cost: float
    score: float


def suggest(word: str, known: Dictionary) -> tuple[str, ...]:
    """What was probably meant, best first, with the capitals of ``word``; at most five."""
    return tuple(in_case_of(word, each.word) for each in candidates(word, known)[:_SUGGESTIONS])


def candidates(word: str, known: Dictionary) -> tuple[Candidate, ...]:
    """All likely readings of a word that the dictionary lacks, best first."""
    if len(word) > _MOST_LETTERS:
        return ()
    return _candidates(word.lower().replace("’", "'"), known)


def in_case_of(pattern: str, word: str) -> str:
    """``word`` with the capitals and the kind of apostrophe of ``pattern``."""
    if "’" in pattern:
        word = word.replace("'", "’")
    if pattern.isupper() and len(pattern) > 1:
        return word.upper()
    return word[:1].upper() + word[1:] if pattern[:1].isupper() else word


@lru_cache(maxsize=4096)
def _candidates(word: str, known: Dictionary) -> tuple[Candidate, ...]:
    found = [*_near(word, known), *_split(word, known)]
    best: dict[str, Candidate] = {}
    for each in sorted(found, key=lambda c: (c.score, c.word)):
        best.setdefault(each.word, each)
    return tuple(best.values())


def _near(word: str, known: Dictionary) -> Iterator[Candidate]:
    """Words a few letters away: two, or three in a long word or from a frequent one (enuff)."""
    most = 1 if len(word) <= 3 else 2 if len(word) <= 6 else 3
    found = set(_within(word, most, _by_length(known)))
    if len(word) <= 6:
        found.update(_within(word, most + 1, _frequent(known)))
    for other in found:
        cost = slip(word, other)
        written = known.capitals.get(other, other) if other not in known.words else other
        yield Candidate(word=written, cost=cost, score=cost * _STEP - max(zipf(other), _LEAST_ZIPF))


def _within(word: str, most: int, shelf: dict[int, list[str]]) -> Iterator[str]:
    near = [w for n in range(len(word) - most, len(word) + most + 1) for w in shelf.get(n, ())]
    for other, *_ in process.extract(
        word, near, scorer=OSA.distance, score_cutoff=most, limit=None
    ):
        yield other


def _split(word: str, known: Dictionary) -> Iterator[Candidate]:
    """Two words written as one. They are about as frequent together as their product says."""
    for at in range(1, len(word)):
        left, right = word[:at], word[at:]
        if left in known.words and right in known.words and _stands_alone(left, right):
            together = zipf(left) + zipf(right) - 6.5
            yield Candidate(
                word=f"{left} {right}", cost=_SPLIT, score=_SPLIT * _STEP - max(together, 0.0)
            )


def _stands_alone(left: str, right: str) -> bool:
    letters = {"a", "i"}
    return all(len(part) > 1 or part in letters for part in (left, right)) and right != "i"


def make_ready(known: Dictionary) -> None:
    """Sort the words ahead of the first question (0.2 s), for who has nothing else to do just then."""
    _by_length(known)
    _frequent(known)


@lru_cache(maxsize=2)
def _by_length(known: Dictionary) -> dict[int, list[str]]:
    return _shelved(known.words.union(known.capitals))


@lru_cache(maxsize=2)
def _frequent(known: Dictionary) -> dict[int, list[str]]:
    # The figures are of words in lower case; OK and I'm are few.
    capitals = (w for w in known.words if not w.islower() and zipf(w) >= _FREQUENT)
    return _shelved({*known.words.intersection(frequent_words(_FREQUENT)), *capitals})


def _shelved(words: Iterable[str]) -> dict[int, list[str]]:
    shelf: dict[int, list[str]] = defaultdict(list)
    for word in words:
        shelf[len(word)].append(word)
    return shelf
