"""Which part of a long report is shown, and which is held back."""

from __future__ import annotations

from proofkit.report import RankedIssue, Report

ROWS = 25  # about as many as an author mends in one sitting
MOST_WORDS = 40


def rows_shown(
    report: Report, limit: int
) -> tuple[tuple[RankedIssue, ...], tuple[RankedIssue, ...]]:
    """The rows shown, errors first, and those held back; a ``limit`` of 0 holds back nothing."""
    in_order = (*report.errors, *report.queries)
    most = limit or len(in_order)
    return in_order[:most], in_order[most:]
