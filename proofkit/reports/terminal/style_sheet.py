"""The style sheet on a console: a heading in weight, and a table without lines under each."""

from __future__ import annotations

from rich.console import Console
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

from proofkit.reports.stylesheet.setting import LEGEND, SheetTable, about, tables, title
from proofkit.reports.terminal.theme import INK, STRONG
from proofkit.stylesheet.sheet import StyleSheet

_GAP = 2
_WIDEST = 132  # a longer line is hard to follow across
_NARROWEST = 60  # below this, a column would be a word wide
_INDENT = 2
_NOTES = 20  # cells that phrases can do with


def show_style_sheet(sheet: StyleSheet, console: Console) -> None:
    """Print the sheet, all of it: it is there to be kept."""
    console.print(Text.assemble((title(sheet), STRONG), f": {about(sheet)}"))
    for notice in sheet.notices:
        console.print(Text.assemble(("Note: ", INK), notice.text))
    for table in tables(sheet):
        console.print()
        console.print(Text(table.heading, STRONG))
        if table.remark:
            console.print(Padding(Text(table.remark), (0, 0, 0, _INDENT)))
        if table.rows and console.width >= _NARROWEST:
            console.print(_columns(table, min(console.width, _WIDEST) - _INDENT))
        elif table.rows:
            _print_stacked(table, console)
    console.print()
    console.print(Text(LEGEND, INK))


def _columns(table: SheetTable, width: int) -> Padding:
    grid = Table(box=None, padding=(0, _GAP, 0, 0), pad_edge=False, header_style=INK)
    for head, cells in zip(table.heads, _widths(table, width), strict=True):
        grid.add_column(Text(head, INK), width=cells)
    for row in table.rows:
        grid.add_row(*map(Text, row))
    return Padding(grid, (0, 0, 0, _INDENT))


def _print_stacked(table: SheetTable, console: Console) -> None:
    """A row on lines of its own, for a window too narrow for columns."""
    for first, *rest in table.rows:
        console.print(Padding(Text(first, STRONG), (0, 0, 0, _INDENT)))
        for head, cell in zip(table.heads[1:], rest, strict=True):
            if cell:
                line = Text.assemble((f"{head}: ", INK), cell)
                console.print(Padding(line, (0, 0, 0, 2 * _INDENT)))


def _widths(table: SheetTable, width: int) -> list[int]:
    """Each column as wide as its longest cell; the last, and then the first ones, give up what lacks."""
    wanted = [max(map(len, column)) for column in zip(table.heads, *table.rows, strict=True)]
    room = width - _GAP * len(wanted)
    # The last column holds phrases, which may run over; what is in the others reads best on one line.
    kept = _fitted(wanted[:-1], max(int(room * 0.6), room - min(wanted[-1], _NOTES)))
    return [*kept, max(len(table.heads[-1]), min(wanted[-1], room - sum(kept)))]


def _fitted(wanted: list[int], room: int) -> list[int]:
    """The widths, the widest cut until all have room."""
    fitted = list(wanted)
    while sum(fitted) > room and max(fitted) > 1:
        fitted[fitted.index(max(fitted))] -= 1
    return fitted
