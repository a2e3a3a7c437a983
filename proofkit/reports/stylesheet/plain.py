"""The style sheet where no terminal shows it: tab-separated, without decoration, nothing cut short."""

from __future__ import annotations

from proofkit.reports.stylesheet.setting import LEGEND, about, tables, title
from proofkit.stylesheet.sheet import StyleSheet


def as_plain(sheet: StyleSheet) -> str:
    """Under each heading its rows, a tab between their cells."""
    lines = [f"{title(sheet)}: {about(sheet)}"]
    lines += [f"Note: {notice.text}" for notice in sheet.notices]
    for table in tables(sheet):
        lines += ["", table.heading]
        lines += [table.remark] if table.remark else []
        lines += ["\t".join(cells) for cells in (table.heads, *table.rows) if table.rows]
    return "\n".join([*lines, "", LEGEND]) + "\n"
