"""The issues as a CSV file, for a spreadsheet: one row each, in the order of their rank."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable

from proofkit.report import RankedIssue, Report
from proofkit.reports.excerpt import excerpt
from proofkit.reports.fault import fault_of
from proofkit.reports.places import also, place

COLUMNS = (
    "manuscript",
    "rank",
    "tier",
    "place",
    "words at fault",
    "in their line",
    "read",
    "why",
    "also",
    "other readings",
    "check",
    "confidence",
    "key",
    "page",
    "start",
    "end",
)

_CONTEXT = 60
# A spreadsheet takes a cell that starts so for a formula, and would carry it out
# (OWASP, CSV Injection, has this list).
_FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r", "\n")


def as_csv(reports: Iterable[Report]) -> str:
    """The issues of all reports under one line of headings, lines ended as RFC 4180 has it."""
    text = io.StringIO(newline="")
    writer = csv.writer(text)
    writer.writerow(COLUMNS)
    for report in reports:
        writer.writerows(_row(report, issue) for issue in report.issues)
    return text.getvalue()


def _row(report: Report, issue: RankedIssue) -> list[str | int | float]:
    text = report.pages[issue.page - 1].text
    fault = fault_of(text, issue)
    first, *others = fault.readings or ("",)
    return [
        harmless(report.manuscript.path),
        issue.rank,
        issue.tier.value,
        harmless(place(report, issue.page, issue.start)),
        harmless(fault.quote),
        harmless(str(excerpt(text, issue, _CONTEXT))),
        harmless(first),
        harmless(issue.message),
        also(report, issue),
        harmless(" | ".join(others)),
        issue.check,
        issue.confidence,
        issue.key,
        issue.page,
        issue.start,
        issue.end,
    ]


def harmless(cell: str) -> str:
    """The cell with an apostrophe before it where a spreadsheet would take it for a formula."""
    return f"'{cell}" if cell.startswith(_FORMULA_STARTS) else cell
