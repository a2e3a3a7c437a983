"""Keys as the author sees and types them: their first letters, as many as tell them apart."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping

from proofkit.report import RankedIssue, Report

SHORTEST = 4


def short_keys(report: Report) -> Mapping[str, str]:
    """For each key of the report, of what is let stand as well, the shortest beginning that is its own."""
    keys = [issue.key for issue in all_issues(report)]
    shared = Counter(key[:length] for key in keys for length in range(SHORTEST, len(key)))
    return {key: _own_beginning(key, shared) for key in keys}


def all_issues(report: Report) -> Iterable[RankedIssue]:
    """The open issues and those let stand, by rank."""
    yield from report.issues
    yield from (each.issue for each in report.let_stand)


def _own_beginning(key: str, shared: Counter[str]) -> str:
    lengths = range(SHORTEST, len(key))
    return next((key[:length] for length in lengths if shared[key[:length]] == 1), key)
