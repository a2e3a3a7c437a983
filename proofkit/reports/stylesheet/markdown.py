"""The style sheet as Markdown: headings, and a table under each."""

from __future__ import annotations

import re
from collections.abc import Sequence

from proofkit.reports.stylesheet.setting import LEGEND, SheetTable, about, tables, title
from proofkit.stylesheet.sheet import StyleSheet

# What would start or end something else than text: a cell, code, emphasis, a link, HTML.
_SIGNS = re.compile(r"([\\|`*_\[\]<>~])")


def as_markdown(sheet: StyleSheet) -> str:
    """The whole sheet; words of the manuscript are shown as they are, whatever signs they hold."""
    blocks = [f"# {_plain(title(sheet))}", _opening(_plain(about(sheet)))]
    blocks += [f"Note: {_plain(notice.text)}" for notice in sheet.notices]
    for table in tables(sheet):
        blocks += [f"## {table.heading}"]
        blocks += [_plain(table.remark)] if table.remark else []
        blocks += [_table(table)] if table.rows else []
    return "\n\n".join([*blocks, LEGEND]) + "\n"


def _table(table: SheetTable) -> str:
    rule = ["---"] * len(table.heads)
    return "\n".join(map(_line, (table.heads, rule, *table.rows)))


def _line(cells: Sequence[str]) -> str:
    return f"| {' | '.join(cell if cell == '---' else _plain(cell) for cell in cells)} |"


def _plain(text: str) -> str:
    return _SIGNS.sub(r"\\\1", text)


def _opening(phrase: str) -> str:
    return phrase[:1].upper() + phrase[1:]
