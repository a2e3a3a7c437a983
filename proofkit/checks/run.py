"""Run checks on one book: one that breaks must not cost the author the others."""

from __future__ import annotations

from collections.abc import Iterable

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Check
from proofkit.issue import Issue
from proofkit.problem import Notice
from proofkit.settings import Settings


def found_by(
    checks: Iterable[Check], book: Book, analysis: Analysis, settings: Settings
) -> tuple[list[Issue], list[Notice]]:
    """All that the checks find, and a notice for each check that failed."""
    issues: list[Issue] = []
    notices = []
    for check in checks:
        try:
            issues += check.find(book, analysis, settings)
        except Exception:  # noqa: BLE001 - whatever it is, the other checks go on
            text = f"The check {check.name} failed on this manuscript; the others went on."
            notices.append(Notice(text=text, unchecked=True))
    return issues, notices
