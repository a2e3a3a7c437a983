"""A ruling of the author's: let it stand. It is about a whole check, a word, or one place.

In ``proofkit.toml`` each is a table of its own, written by ``proofkit stet`` or by hand:

    [[stet]]
    key = "k7f2bcd"
    check = "spelling/misspelling"
    line = "… and away went the ›honk-a-lonk‹ of geese, over the …"
    page = "spread 4"             # for the reader of this file alone
    because = "her own word"
    date = 2026-11-25

    [[stet]]
    word = "gonna"                # in whatever check, unless one is named beside it

    [[stet]]
    check = "commas/missing-in-list"
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from proofkit.own_file import FILE_NAME, OwnFile
from proofkit.problem import Unusable
from proofkit.rulings.passage import Passage, passage_in

TABLE = "stet"


@dataclass(frozen=True, slots=True, kw_only=True)
class Ruling:
    """One ruling. With a key or a ``place`` it is about that place, else about a word or a check.

    ``at``       where it is written, to be named in a sentence: the file and the line
    ``line``     that line's number, or None where it can't be told
    ``key``      the key that the issue had when it was ruled on
    ``place``    the passage it is about; None for a word, a check, or a key alone
    ``also``     other places of the same matter
    ``equals``   how many places there were that differ in nothing a key is made from
    """

    at: str
    line: int | None = None
    key: str = ""
    check: str = ""
    word: str = ""
    place: Passage | None = None
    also: tuple[Passage, ...] = ()
    equals: int = 1
    because: str = ""

    @property
    def about_place(self) -> bool:
        """Whether it is about one place, not about a word or a check wherever they stand."""
        return bool(self.key or self.place)

    @property
    def about_check(self) -> bool:
        """Whether it is about a whole check."""
        return bool(self.check) and not (self.about_place or self.word)


def rulings_in(own: OwnFile | None) -> tuple[Ruling, ...]:
    """The rulings in a book's own file, in its order.

    Raises Unusable, naming the line, where one can't be understood.
    """
    tables = own.values.get(TABLE, []) if own else []
    if own is None or tables == []:
        return ()
    if not isinstance(tables, list) or not all(isinstance(table, dict) for table in tables):
        raise Unusable(
            f"{own.at(own.line_of(TABLE))}: what is to stand is written under [[{TABLE}]], in two pairs of "
            "brackets."
        )
    lines = own.lines_of_tables(TABLE)
    known = lines if len(lines) == len(tables) else [own.line_of(TABLE)] * len(tables)
    return tuple(_ruling(own, table, line) for table, line in zip(tables, known, strict=True))


def idle_sentence(rulings: Sequence[Ruling]) -> str:
    """What to tell an author of rulings that match nothing in a manuscript."""
    lines = [str(ruling.line) for ruling in rulings if ruling.line]
    many = len(rulings) > 1
    where = f" on line{'s' if many else ''} {_listed(lines)}" if len(lines) == len(rulings) else ""
    return (
        f"The {'rulings' if many else 'ruling'}{where} of {FILE_NAME} no longer {'match' if many else 'matches'} "
        f"anything in this manuscript, and can be taken out when no other draft needs {'them' if many else 'it'}."
    )


def _listed(parts: Sequence[str]) -> str:
    return f"{', '.join(parts[:-1])} and {parts[-1]}" if len(parts) > 1 else "".join(parts)


def _ruling(own: OwnFile, table: Mapping[str, object], line: int | None) -> Ruling:
    at = own.at(line)
    texts = {name: _text(table, name, at) for name in ("key", "check", "word", "line", "because")}
    place = passage_in(texts["line"])
    if texts["line"] and place is None and not texts["key"]:
        raise Unusable(f"{at}: mark the words that are to stand in the line, as in ›these words‹.")
    if not (texts["key"] or texts["check"] or texts["word"] or place):
        raise Unusable(
            f"{at}: this [[{TABLE}]] doesn’t say what is to stand. Give it a word or a check, or take it out."
        )
    return Ruling(
        at=at,
        line=line,
        key=texts["key"],
        check=texts["check"],
        word=texts["word"],
        place=place,
        also=_also(table, at),
        equals=_equals(table, at),
        because=texts["because"],
    )


def _text(table: Mapping[str, object], name: str, at: str) -> str:
    value = table.get(name, "")
    if not isinstance(value, str):
        raise Unusable(f'{at}: {name} must be in quotation marks, as in {name} = "…".')
    return value.strip() if name != "line" else value


def _also(table: Mapping[str, object], at: str) -> tuple[Passage, ...]:
    lines = table.get("also", [])
    if not isinstance(lines, list):
        raise Unusable(f'{at}: also must be a list of lines, as in also = ["…", "…"].')
    passages = (passage_in(line) for line in lines if isinstance(line, str))
    return tuple(passage for passage in passages if passage)


def _equals(table: Mapping[str, object], at: str) -> int:
    value = table.get("equals", 1)
    if not isinstance(value, int):
        raise Unusable(f"{at}: equals must be a number, as in equals = 2.")
    return value
