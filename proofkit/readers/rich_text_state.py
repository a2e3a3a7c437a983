"""What holds at a place in a Rich Text file: for its characters, and for the paragraph around them."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from itertools import groupby

from proofkit.readers.blocks import Block, Break
from proofkit.readers.italics import Italics, italics_of
from proofkit.readers.rich_text_words import Sink, paired

_HEADING = re.compile(r"heading (\d)$", re.IGNORECASE)
_BODY_TEXT = 9  # the outline level of what is no heading
# Control words that a 0 turns off again, and what each turns on.
_SWITCHES = {"b": "bold", "i": "italic", "v": "hidden", "deleted": "deleted", "revised": "inserted"}


@dataclass(slots=True)
class Group:
    """What holds inside one pair of braces, and goes back when they close.

    ``sink``      where characters go
    ``starred``   whether the next word names a group that a reader may skip
    ``encoding``  of the bytes above 127
    ``fallback``  how many characters after a Unicode one stand for it in old readers
    """

    sink: Sink = Sink.TEXT
    starred: bool = False
    encoding: str = ""
    fallback: int = 1
    bold: bool = False
    italic: bool = False
    deleted: bool = False
    inserted: bool = False
    hidden: bool = False
    folio: bool = False
    style: int = 0
    font: int = 0

    def apply(self, word: str, number: int | None) -> None:
        """Take in a control word about characters; any other is ignored."""
        if word in _SWITCHES:
            setattr(self, _SWITCHES[word], number != 0)
        elif word == "plain":
            self.bold = self.italic = self.hidden = self.deleted = self.inserted = False
        elif word == "uc":
            self.fallback = max(0, number or 0)
        elif word == "s":
            self.style = number or 0

    @property
    def change(self) -> str:
        """Which kind of tracked change its characters are, or ""."""
        return "deleted" if self.deleted else "inserted" if self.inserted else ""


@dataclass(slots=True)
class Paragraph:
    """The paragraph that is being read; bold and a folio until a word says otherwise."""

    text: str = ""
    pieces: list[tuple[str, bool]] = field(default_factory=list)
    bold: bool = True
    folio: bool = True
    style: int = 0
    outline: int = _BODY_TEXT
    in_table: bool = False
    before: Break = Break.NONE

    def apply(self, word: str, number: int | None) -> None:
        """Take in a control word about paragraphs; any other is ignored."""
        if word == "pard":
            self.style, self.outline, self.in_table = 0, _BODY_TEXT, False
        elif word == "s":
            self.style = number or 0
        elif word == "outlinelevel":
            self.outline = number or 0
        elif word == "intbl":
            self.in_table = True
        elif word == "pagebb" and number != 0:
            self.before = Break.PAGE

    def add(self, text: str, group: Group) -> None:
        """Add characters in the group's form."""
        self.text += text
        self.pieces.append((text, group.italic))
        if text.strip():
            self.bold &= group.bold
            self.folio &= group.folio

    def italics(self) -> Italics:
        """What of its text is italic. Pieces are joined first: a character may come in two halves."""
        runs = groupby(self.pieces, key=lambda piece: piece[1])
        return italics_of(
            (paired("".join(text for text, _ in pieces)), italic) for italic, pieces in runs
        )

    def next(self) -> Paragraph:
        """The paragraph after this one, in the same form."""
        return Paragraph(style=self.style, outline=self.outline, in_table=self.in_table)

    def level(self, style: str) -> int:
        """Its heading level, by the name of its style or its own outline level; 0 for none."""
        if found := _HEADING.match(style):
            return int(found[1])
        return self.outline + 1 if self.outline < _BODY_TEXT else 0


@dataclass(slots=True)
class Table:
    """The table that is being read: its rows, and the row and the cell that are still open."""

    cell: list[Block] = field(default_factory=list)
    row: list[list[Block]] = field(default_factory=list)
    rows: list[list[list[Block]]] = field(default_factory=list)

    def end_cell(self) -> None:
        """Close the cell."""
        self.row.append(self.cell)
        self.cell = []

    def end_row(self) -> None:
        """Close the row."""
        self.rows.append(self.row)
        self.row = []

    def end(self) -> list[list[list[Block]]]:
        """Close the table, and what the file left open in it; its rows."""
        if self.cell or self.row:
            self.rows.append([*self.row, self.cell])
        rows, self.cell, self.row, self.rows = self.rows, [], [], []
        return rows
