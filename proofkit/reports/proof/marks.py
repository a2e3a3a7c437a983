"""Which mark a corrector would make, from the words at fault and what to read instead.

The names are those of ISO 5776:2016, Symbols for text proof correction, and of BS 5261-2:2005, which
agree in these.
"""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from enum import StrEnum

_LETTERS = 3  # a change of more letters inside a word is marked on the whole word
_TWO_WORDS = re.compile(r"(\w+)(\W+)(\w+)")
_JOINERS = "\u200d\ufe0e\ufe0f"


class Kind(StrEnum):
    """What a mark asks for."""

    INSERT = "insert"
    DELETE = "delete"
    DELETE_CLOSE = "delete and close up"
    SUBSTITUTE = "substitute"
    CLOSE_UP = "close up"
    INSERT_SPACE = "insert space"
    REDUCE_SPACE = "reduce space"
    TRANSPOSE = "transpose"
    CAPITAL = "capital"
    LOWER_CASE = "lower case"
    NEW_PARAGRAPH = "new paragraph"
    RUN_ON = "run on"
    STET = "stet"
    QUERY = "query to author"


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """A mark on characters ``start`` to ``end`` of the words at fault, which ``new`` is to replace.

    Only a query changes nothing; its ``new`` is empty.
    """

    kind: Kind
    start: int
    end: int
    new: str = ""


def mark_of(quote: str, reading: str | None) -> Mark:
    """The mark that turns ``quote`` into ``reading``, on as little of it as tells the change.

    Without a reading, or where nothing is to change, it is a query on the whole.
    """
    if reading is None or reading == quote:
        return Mark(kind=Kind.QUERY, start=0, end=len(quote))
    if _swapped(quote, reading):
        return Mark(kind=Kind.TRANSPOSE, start=0, end=len(quote), new=reading)
    start, tail = _alike(quote, reading)
    end = len(quote) - tail
    old, new = quote[start:end], reading[start : len(reading) - tail]
    kind = _kind(quote, start, end, new)
    if kind is Kind.REDUCE_SPACE:
        start, end = _whole_gap(quote, start, end)
    elif kind in (Kind.INSERT, Kind.DELETE_CLOSE, Kind.SUBSTITUTE) and (
        max(len(old), len(new)) > _LETTERS
    ):
        start, end = _whole_words(quote, start, end)
        kind = Kind.SUBSTITUTE if start < end else kind
    return Mark(
        kind=kind, start=start, end=end, new=reading[start : len(reading) - len(quote) + end]
    )


def _alike(quote: str, reading: str) -> tuple[int, int]:
    """How many characters are the same at the beginning, and at the end; no sign is cut from its accent."""
    shorter = min(len(quote), len(reading))
    start = next((n for n in range(shorter) if quote[n] != reading[n]), shorter)
    while start and (_hangs_on(quote, start) or _hangs_on(reading, start)):
        start -= 1
    most = shorter - start
    tail = next((n for n in range(most) if quote[-1 - n] != reading[-1 - n]), most)
    while tail and _hangs_on(quote, len(quote) - tail):
        tail -= 1
    return start, tail


def _hangs_on(text: str, at: int) -> bool:
    """Whether the character there belongs to the one before it."""
    return at < len(text) and (unicodedata.combining(text[at]) > 0 or text[at] in _JOINERS)


def _kind(quote: str, start: int, end: int, new: str) -> Kind:
    old = quote[start:end]
    if not old.strip() and not new.strip():
        return _of_spaces(quote, start, end, new)
    if not old:
        return Kind.INSERT
    if not new:
        return Kind.DELETE_CLOSE if _inside_word(quote, start, end) else Kind.DELETE
    if old.casefold() == new.casefold() and len(old) == len(new):
        return _of_case(new)
    if len(old) == 2 and old == new[::-1]:
        return Kind.TRANSPOSE
    return Kind.SUBSTITUTE


def _of_spaces(quote: str, start: int, end: int, new: str) -> Kind:
    old = quote[start:end]
    if "\n" in new and "\n" not in old:
        return Kind.NEW_PARAGRAPH
    if "\n" in old and "\n" not in new:
        return Kind.RUN_ON
    if not old:
        return Kind.INSERT_SPACE
    beside = quote[max(0, start - 1) : start] + quote[end : end + 1]
    if new or any(sign.isspace() for sign in beside):
        return Kind.REDUCE_SPACE if len(new) < len(old) else Kind.SUBSTITUTE
    return Kind.CLOSE_UP


def _of_case(new: str) -> Kind:
    if new.isupper():
        return Kind.CAPITAL
    return Kind.LOWER_CASE if new.islower() else Kind.SUBSTITUTE


def _inside_word(quote: str, start: int, end: int) -> bool:
    return quote[max(0, start - 1) : start].isalnum() and quote[end : end + 1].isalnum()


def _swapped(quote: str, reading: str) -> bool:
    found = _TWO_WORDS.fullmatch(quote)
    return bool(found) and reading == "".join(found.group(3, 2, 1)) if found else False


def _whole_gap(quote: str, start: int, end: int) -> tuple[int, int]:
    while start and quote[start - 1].isspace():
        start -= 1
    while end < len(quote) and quote[end].isspace():
        end += 1
    return start, end


def _whole_words(quote: str, start: int, end: int) -> tuple[int, int]:
    """The stretch grown to the ends of the words that it cuts."""
    cuts_before = start and quote[start - 1].isalnum()
    cuts_after = end < len(quote) and quote[end].isalnum()
    while cuts_before and start and quote[start - 1].isalnum():
        start -= 1
    while cuts_after and end < len(quote) and quote[end].isalnum():
        end += 1
    return start, end
