"""The drafts of a book on a console: a row each, and a strip of how much was still open."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from rich.console import Console
from rich.table import Table
from rich.text import Text

from proofkit.drafts.summary import Summary
from proofkit.reports.drafts.setting import HEADS, NUMBERS, SPARED, about, remarks, rows, title
from proofkit.reports.terminal.theme import INK, STRONG

_GAP = 2
_LONGEST_FILE = 24  # characters
_WIDEST = 132  # a longer line is hard to follow across
_MOST_ROWS = 40
_HEIGHTS = "▁▂▃▄▅▆▇█"
_NOTHING = "·"


def show_drafts(drafts: Sequence[Summary], console: Console, hiding: Sequence[str] = ()) -> None:
    """Print the newest drafts, a row each, and under them where slips hide.

    In a narrow window the table gives up columns, never the counts.
    """
    console.print(Text.assemble((title(drafts), STRONG), f": {about(drafts)}"))
    console.print()
    cells = [dict(zip(HEADS, row, strict=True)) for row in rows(drafts)][-_MOST_ROWS:]
    for row in cells:
        row["file"] = _shortened(row["file"], _LONGEST_FILE)
    heads = _fitting(cells, min(console.width, _WIDEST))
    grid = Table(box=None, padding=(0, _GAP, 0, 0), pad_edge=False, header_style=INK)
    for head in heads:
        justify: Literal["left", "right"] = "right" if head in NUMBERS else "left"
        grid.add_column(Text(head, INK), justify=justify, no_wrap=True)
    for row in cells:
        grid.add_row(*(Text(row[head]) for head in heads))
    console.print(grid)
    console.print()
    if len(drafts) > _MOST_ROWS:
        earlier = f"{len(drafts) - _MOST_ROWS:,} earlier drafts held back. To see all"
        console.print(Text(f"{earlier}: proofkit drafts --output drafts.csv", INK))
    if strip := _strip(drafts, console):
        console.print(strip)
    *others, last = remarks(drafts)
    for sentence in (*hiding, *others):
        console.print(Text(sentence))
    console.print(Text(last, STRONG))


def _strip(drafts: Sequence[Summary], console: Console) -> Text | None:
    """What was still open in each draft, as columns side by side, the newest last."""
    open_ = [draft.errors + draft.queries for draft in drafts]
    if len(drafts) < 2 or not max(open_) or not console.encoding.startswith("utf"):
        return None
    newest = len(open_)
    shown = open_[-(console.width - len(f"Still open, no. {newest} to {newest}: ")) :]
    name = f"Still open, no. {newest - len(shown) + 1} to {newest}: "
    most = max(open_)
    # What is open is never shown as nothing.
    columns = (
        _HEIGHTS[round((len(_HEIGHTS) - 1) * number / most)] if number else _NOTHING
        for number in shown
    )
    return Text.assemble(name, ("".join(columns), INK), no_wrap=True)


def _fitting(cells: Sequence[dict[str, str]], room: int) -> list[str]:
    """The columns that have anything in them and that there is room for."""
    heads = [head for head in HEADS if any(row[head] for row in cells)]
    for spared in SPARED:
        if _width(cells, heads) <= room:
            break
        if spared in heads:
            heads.remove(spared)
    return heads


def _width(cells: Sequence[dict[str, str]], heads: Sequence[str]) -> int:
    return sum(_GAP + max(len(head), *(len(row[head]) for row in cells)) for head in heads)


def _shortened(name: str, most: int) -> str:
    """A file's name without its middle: its beginning and its ending tell most."""
    if len(name) <= most:
        return name
    end = most // 2
    return f"{name[: most - end - 1]}…{name[-end:]}"
