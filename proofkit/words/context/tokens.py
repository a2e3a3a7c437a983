"""A text as the model of context sees it: words in lower case and three kinds of stop.

Names are one token, for who does a thing says little of the words beside it; quotation marks are left
out; the half stops count as a comma, for today's books use few of them. All this makes the old novels
that the model has learnt from and today's picture books look more alike.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass

from proofkit.words.lists import word_set
from proofkit.words.vocabulary import opens_sentence

NAME = "Nn"
EDGE = "¶"
REACH = 6  # tokens on either side that anything looks at

_PIECE = re.compile(
    r"(?:Mr|Mrs|Ms|Dr|St)\.|[^\W\d_]+(?:['’\-‑][^\W\d_]+)*|\d[\d.,]*\d|\d|[.!?…]+|[,;:()]|--+|[–—]"
)
_TITLE = re.compile(r"\b(?:Mr|Mrs|Ms|Dr|St)\. $")
_ENDINGS = ("ing", "ed", "ly", "'s", "s", "er")
# Capitals that make no name of a word.
_NO_NAMES = word_set(
    "i i'm i'll i've i'd monday tuesday wednesday thursday friday saturday sunday january february march "
    "april june july august september october november december christmas english god"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Tokens:
    """The tokens of one stretch of text, with EDGE before and after; ``starts`` and ``ends`` count in it.

    ``capital`` says of each token whether it is written with a capital that its place doesn't ask for.
    """

    words: list[str]
    starts: list[int]
    ends: list[int]
    capital: list[bool]


def tokens_of(text: str, is_name: Callable[[str], bool], start: int = 0, end: int = -1) -> Tokens:
    """The tokens of ``text`` from ``start`` to ``end``; ``is_name`` says what the book treats as a name."""
    end = len(text) if end < 0 else end
    words, starts, ends, capital = [EDGE] * REACH, [start] * REACH, [start] * REACH, [True] * REACH
    for match in _PIECE.finditer(text, start, end):
        word, inside = _token(text, match, is_name)
        if word == words[-1] and not word[0].islower():
            ends[-1] = match.end()
            continue
        words.append(word)
        starts.append(match.start())
        ends.append(match.end())
        capital.append(inside)
    words += [EDGE] * REACH
    starts += [end] * REACH
    ends += [end] * REACH
    capital += [True] * REACH
    return Tokens(words=words, starts=starts, ends=ends, capital=capital)


def class_of(word: str) -> str:
    """What stands for a word that the model has met too seldom: its ending, or that it is joined."""
    if "-" in word:
        return "<->"
    for ending in _ENDINGS:
        if word.endswith(ending):
            return f"<{ending}>"
    return "<>"


def plain(word: str) -> str:
    """The word in lower case, with straight apostrophes and hyphens."""
    return word.lower().replace("’", "'").replace("‑", "-")


def _token(text: str, match: re.Match[str], is_name: Callable[[str], bool]) -> tuple[str, bool]:
    piece = match.group()
    first = piece[0]
    if first.isalpha():
        word = plain(piece)
        if not first.isupper() or word in _NO_NAMES:
            return word, False
        return _capitalised(text, match.start(), piece, word, is_name)
    if first.isdigit():
        return "#", True
    if first in ".!?…":
        return ("?" if "?" in piece else "."), True
    return ",", True


def _capitalised(
    text: str, at: int, piece: str, word: str, is_name: Callable[[str], bool]
) -> tuple[str, bool]:
    owner = word.endswith("'s")
    opens = opens_sentence(text, at) and not _TITLE.search(text, max(0, at - 5), at)
    inside = not opens and not (len(piece) > 1 and piece.isupper())
    if inside or piece[-1] == "." or is_name(piece[:-2] if owner else piece):
        return (f"{NAME}'s" if owner else NAME), True
    return word, False
