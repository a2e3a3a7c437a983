"""Which English a spelling is at home in, and what it is in the other: from VarCon.

The table ``wordlists/varcon.tsv`` is made from VarCon 2020.12.07 (Kevin Atkinson and Benjamin
Titze; its licence stands in ``wordlists/varcon-README.txt``) by ``wordlists/make_varcon.py``, which
says what was kept. A spelling at home in both Englishes in any sense belongs to neither: "story" is
British too, though a storey is not a story.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from proofkit.settings import English
from proofkit.words.data import wordlist

_TABLE = "varcon.tsv"


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """One sense of a word: its forms at home in each English, the preferred first.

    ``oxford`` holds the British forms with -ize where they differ from ``british``; ``pos`` is "N",
    "V", "Adj" or "" (any); ``sense`` is VarCon's own note, or "".
    """

    american: tuple[str, ...]
    british: tuple[str, ...]
    oxford: tuple[str, ...]
    seldom_american: tuple[str, ...]
    seldom_british: tuple[str, ...]
    pos: str
    sense: str

    def seldom(self, english: English) -> tuple[str, ...]:
        """The forms that ``english`` has but seldom uses."""
        return self.seldom_american if english is English.AMERICAN else self.seldom_british

    def forms(self, english: English) -> tuple[str, ...]:
        """The forms at home in ``english``."""
        if english is English.AMERICAN:
            return self.american
        return (*self.british, *(form for form in self.oxford if form not in self.british))


class Variants:
    """Spellings of the two Englishes. Words are asked for in any capitals and answered in the same."""

    def __init__(self, rows: Mapping[str, tuple[str, ...]], capitals: frozenset[str]) -> None:
        self._rows = rows
        self._capitals = capitals

    def readings(self, word: str) -> tuple[Reading, ...]:
        """The senses of a word that has another spelling, here or in the other English; empty for all others."""
        return tuple(_reading(row) for row in self._rows.get(word.lower(), ()))

    def belongs_to(self, word: str) -> English | None:
        """The one English that the spelling is at home in; None if it is at home in both or unknown."""
        at_home = {
            english
            for english in English
            for reading in self.readings(word)
            if word.lower() in reading.forms(english)
        }
        return at_home.pop() if len(at_home) == 1 else None

    def british(self, word: str, pos: str = "") -> str | None:
        """The word as British English spells it: itself if that is right in some sense.

        ``pos`` ("N", "V") narrows the senses. None if the word is unknown, or if senses differ.
        """
        return self._spelling(word, English.BRITISH, pos)

    def american(self, word: str, pos: str = "") -> str | None:
        """The word as American English spells it; see ``british``."""
        return self._spelling(word, English.AMERICAN, pos)

    def in_english(self, word: str, english: English, pos: str = "") -> str | None:
        """The word as that English spells it; see ``british``."""
        return self._spelling(word, english, pos)

    def takes_capital(self, word: str) -> bool:
        """Whether it may have a capital though it is no name: Americanise."""
        return word.lower() in self._capitals

    def seldom_in(self, word: str, english: English) -> bool:
        """Whether that English has the spelling but seldom uses it: "grey" in American."""
        return any(word.lower() in reading.seldom(english) for reading in self.readings(word))

    def accepted(self, word: str, english: English) -> tuple[str, ...]:
        """The spellings of the word that ``english`` has, the preferred first, itself among them.

        Empty unless there are at least two. Words whose senses VarCon tells apart (mat, matte) have none:
        there the spelling may follow the sense.
        """
        lower, readings = word.lower(), self.readings(word)
        if len(readings) != 1 or readings[0].sense:
            return ()
        forms = readings[0].forms(english)
        return forms if lower in forms and len(forms) > 1 else ()

    def ise_ize(self, word: str) -> str | None:
        """The British partner of an -ise word with -ize, or the other way round; None for all others."""
        lower = word.lower()
        for reading in self.readings(word):
            if not reading.oxford or set(reading.oxford) & set(reading.british):
                continue
            if lower in reading.british:
                return cased_like(reading.oxford[0], word)
            if lower in reading.oxford:
                return cased_like(reading.british[0], word)
        return None

    def _spelling(self, word: str, english: English, pos: str) -> str | None:
        lower = word.lower()
        readings = [r for r in self.readings(word) if not pos or r.pos in ("", pos)]
        if any(lower in reading.forms(english) for reading in readings):
            return word
        first = {forms[0] for reading in readings if (forms := reading.forms(english))}
        if len(first) > 1:  # calking is caulking, not caulk: the same form of the word
            first = {form for form in first if form[-3:] == lower[-3:]}
        return cased_like(first.pop(), word) if len(first) == 1 else None


@lru_cache(maxsize=1)
def variants() -> Variants:
    """The table, loaded once (about 10 ms)."""
    rows: dict[str, list[str]] = defaultdict(list)
    capitals = set[str]()
    for row in wordlist(_TABLE).read_text(encoding="utf-8").splitlines():
        if not row.startswith("#"):
            forms = "/".join(row.split("\t", 5)[:5])
            with_capital = forms != forms.lower()
            for form in dict.fromkeys(forms.lower().split("/")):
                rows[form].append(row.lower() if with_capital else row)
                if with_capital:
                    capitals.add(form)
    rows.pop("", None)
    return Variants({form: tuple(own) for form, own in rows.items()}, frozenset(capitals - {""}))


def other_english(english: English) -> English:
    """American for British, British for American."""
    return English.AMERICAN if english is English.BRITISH else English.BRITISH


def cased_like(form: str, model: str) -> str:
    """``form`` with the capitals of ``model``: all, the first, or none."""
    if len(model) > 1 and model.isupper():
        return form.upper()
    return form[:1].upper() + form[1:] if model[:1].isupper() else form


def _reading(row: str) -> Reading:
    american, british, oxford, seldom_american, seldom_british, pos, sense = row.split("\t")
    return Reading(
        american=_forms(american),
        british=_forms(british),
        oxford=_forms(oxford),
        seldom_american=_forms(seldom_american),
        seldom_british=_forms(seldom_british),
        pos=pos,
        sense=sense,
    )


def _forms(column: str) -> tuple[str, ...]:
    return tuple(column.lower().split("/")) if column else ()
