"""The drafts as a CSV file, for a spreadsheet: a row each."""

from __future__ import annotations

import csv
import io
from collections.abc import Sequence

from proofkit.drafts.summary import Summary
from proofkit.reports.csv_report import harmless
from proofkit.reports.drafts.json_drafts import Row, row_of

COLUMNS = tuple(name for name in Row.__dataclass_fields__ if name != "error_changes")


def as_csv(drafts: Sequence[Summary]) -> str:
    """The rows under one line of headings, lines ended as RFC 4180 has it."""
    text = io.StringIO(newline="")
    writer = csv.writer(text)
    writer.writerow(name.replace("_", " ") for name in COLUMNS)
    before: Summary | None = None
    for draft in drafts:
        row = row_of(draft, before)
        values = (getattr(row, name) for name in COLUMNS)
        writer.writerow(harmless(v) if isinstance(v, str) else v for v in values)
        before = draft
    return text.getvalue()
