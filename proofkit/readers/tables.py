"""Tables as authors use them: a row for each page or spread, or the two sides of one spread.

A column under a heading such as "Page" or "Spread" (or, without headings, a first column of marks or
numbers) holds the marks, one under "Illustration" or "Art notes" holds notes, two under "Left" and
"Right" hold the sides of spreads. A row of two filled cells that nothing else explains is a left and a
right page. Any other table is read cell by cell.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from enum import StrEnum

from proofkit.book import Role
from proofkit.readers.blocks import Block, Break, Part, plain
from proofkit.readers.marks import mark_in, number_mark, part_in

Cell = Sequence[Block]
Row = Sequence[Cell]


class Column(StrEnum):
    """What a column of a table holds."""

    MARK = "mark"
    PAGE_NUMBER = "page number"
    SPREAD_NUMBER = "spread number"
    TEXT = "text"
    NOTE = "note"
    LEFT = "left"
    RIGHT = "right"


_HEADINGS = (
    (r"(?:double[- ])?(?:spreads?|dps)(?: ?(?:no\.?|number|#))?", Column.SPREAD_NUMBER),
    (r"(?:pages?|pp?\.?|pg\.?)(?: ?(?:no\.?|nos\.?|numbers?|#))?", Column.PAGE_NUMBER),
    (r"no\.?|number|#", Column.MARK),
    (r"(?:story |manuscript )?(?:text|words|story|manuscript|copy)", Column.TEXT),
    (
        (
            r"(?:illustration|illustrator|illo|illus|art|artwork|picture|image|visual|design|layout)s?'?s?"
            r"(?: (?:notes?|ideas?|briefs?|suggestions?|descriptions?))?|notes?"
        ),
        Column.NOTE,
    ),
    (r"left(?:[- ]hand)?(?: page| side)?", Column.LEFT),
    (r"right(?:[- ]hand)?(?: page| side)?", Column.RIGHT),
)
# A number alone gets the word that its column has: "3" under "Spread" is "Spread 3".
_COUNTED = {Column.PAGE_NUMBER: "Page", Column.SPREAD_NUMBER: "Spread"}
_HEADING = tuple((re.compile(pattern, re.IGNORECASE), column) for pattern, column in _HEADINGS)


def table_blocks(rows: Sequence[Row]) -> Iterator[Block]:
    """The blocks of a table in reading order, with marks, sides, notes and row breaks set."""
    rows = [row for row in rows if row]
    if not rows:
        return
    columns = _headed(rows[0])
    if columns:
        rows = rows[1:]
    else:
        columns = _by_content(rows)
    for row in rows:
        yield from _row(row, columns, break_before=len(rows) > 1)


def _headed(row: Row) -> list[Column]:
    """What the columns hold by the table's first row, or nothing if that is no row of headings."""
    columns = [_heading(_text(cell)) for cell in row]
    known = [column for column in columns if column]
    return known if 2 <= len(row) == len(known) else []


def _heading(text: str) -> Column | None:
    bare = text.strip(" :*")
    return next((column for pattern, column in _HEADING if pattern.fullmatch(bare)), None)


def _by_content(rows: Sequence[Row]) -> list[Column]:
    width = max(len(row) for row in rows)
    if width < 2:
        return [Column.TEXT]
    firsts = [_text(row[0]) for row in rows]
    if all(_whole_mark(text) for text in firsts if text) and any(firsts):
        return [Column.MARK] + [Column.TEXT] * (width - 1)
    if width == 2 and not any(_has_mark(cell) for row in rows for cell in row):
        return [Column.LEFT, Column.RIGHT]
    return [Column.TEXT] * width


def _row(row: Row, columns: list[Column], *, break_before: bool) -> Iterator[Block]:
    if len(row) < len(columns) or not all(_text(cell) for cell in row):
        # A cell over the whole width, or an empty side, makes no pair.
        columns = [Column.TEXT if c in {Column.LEFT, Column.RIGHT} else c for c in columns]
    if break_before:
        yield Block(text="", before=Break.ROW)
    for index, cell in enumerate(row):
        column = columns[index] if index < len(columns) else Column.TEXT
        for block in cell:
            yield from _cell_block(block, column)


def _cell_block(block: Block, column: Column) -> Iterator[Block]:
    if column in _COUNTED and number_mark(plain(block.text)):
        yield replace(block, text=f"{_COUNTED[column]} {plain(block.text)}")
    elif column is Column.NOTE:
        yield replace(block, role=Role.NOTE)
    elif column is Column.LEFT:
        yield replace(block, part=Part.LEFT)
    elif column is Column.RIGHT:
        yield replace(block, part=Part.RIGHT)
    else:
        yield block


def _whole_mark(text: str) -> bool:
    mark = mark_in(text)
    return number_mark(text) is not None or (mark is not None and not mark.rest)


def _has_mark(cell: Cell) -> bool:
    return any(mark_in(block.text) or part_in(block.text) for block in cell)


def _text(cell: Cell) -> str:
    return " ".join(plain(block.text) for block in cell).strip()
