"""Words with two accepted spellings inside one English: towards and toward, while and whilst.

The table is ``wordlists/two-spellings.txt``, chosen by hand after VarCon's equal variants.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache

from proofkit.words.data import wordlist
from proofkit.words.variants import cased_like

_SHORTEST_STEM = 5
_LONGEST_ENDING = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Family:
    """One word in its accepted spellings; ``lines`` hold the same spellings of its other forms.

    ``kind``  "past", "adverb", "phrase" or "": what it must be in a sentence to count
    """

    kind: str
    lines: tuple[tuple[str, ...], ...]

    @property
    def forms(self) -> tuple[str, ...]:
        """The spellings by the word's first form, the one dictionaries put first in front."""
        return self.lines[0]

    def form_of(self, written: str) -> str | None:
        """Which of ``forms`` a word of the family, in any capitals, is spelt after."""
        lower = written.lower().replace("’", "'")
        return next((self.forms[line.index(lower)] for line in self.lines if lower in line), None)

    def respelt(self, written: str, form: str) -> str:
        """A word of the family spelt after ``form``, its capitals kept."""
        lower = written.lower().replace("’", "'")
        line = next(line for line in self.lines if lower in line)
        return cased_like(line[self.forms.index(form)], written)


@lru_cache(maxsize=1)
def families() -> tuple[Family, ...]:
    """Every family of the table."""
    return tuple(Family(kind=kind, lines=tuple(lines)) for kind, lines in _grouped(list(_table())))


@lru_cache(maxsize=1)
def family_by_word() -> Mapping[str, Family]:
    """Every spelling in lower case, with its family."""
    return {word: family for family in families() for line in family.lines for word in line}


def _table() -> Iterator[tuple[str, tuple[str, ...]]]:
    for row in wordlist("two-spellings.txt").read_text("utf-8").splitlines():
        if row and not row.startswith("#"):
            kind, colon, forms = row.rpartition(":")
            yield (kind if colon else ""), tuple(forms.strip().split("/"))


def _grouped(
    rows: list[tuple[str, tuple[str, ...]]],
) -> Iterator[tuple[str, list[tuple[str, ...]]]]:
    """The rows, neighbours that are forms of one word together: wagon, wagons."""
    kind, lines = rows[0][0], [rows[0][1]]
    for own_kind, forms in rows[1:]:
        if own_kind == kind and len(forms) == len(lines[0]) and _kin(lines[0][0], forms[0]):
            lines.append(forms)
            continue
        yield kind, lines
        kind, lines = own_kind, [forms]
    yield kind, lines


def _kin(first: str, other: str) -> bool:
    common = next(
        (n for n, (a, b) in enumerate(zip(first, other, strict=False)) if a != b), len(first)
    )
    return other.startswith(first) or common >= max(_SHORTEST_STEM, len(first) - _LONGEST_ENDING)
