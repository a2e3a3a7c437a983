"""Recording what was checked in the ledger of its book, so that the report can say what changed."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable
from dataclasses import replace
from datetime import datetime

from proofkit.drafts.draft import Draft, DraftIssue
from proofkit.drafts.from_report import draft_of
from proofkit.drafts.keeping import keep
from proofkit.drafts.ledger import Recorded
from proofkit.drafts.ledger_file import ledger_of
from proofkit.drafts.summary import days_between
from proofkit.pipeline import Outcome
from proofkit.problem import Notice
from proofkit.report import Report, SinceLast
from proofkit.reports.drafts.eyes import sentences_on_eyes
from proofkit.settings import Settings

_FIRST = (
    "This is the first draft of the book in its ledger, {}. The next one that is checked in this folder, "
    "whatever its file is called, is compared with it."
)
_NOTHING_BEFORE = "There is no earlier draft to compare with, so all rows are listed."


def recorded(outcome: Outcome) -> Report | None:
    """The report of a checked manuscript, with what changed since the last draft of its book.

    Where the manuscript lies in no book's folder nothing is recorded, and nothing is said.
    """
    report, ledger = outcome.report, ledger_of(outcome.path)
    if report is None or ledger is None:
        return report
    kept = keep(ledger, lambda: _draft(outcome, report))
    begun = kept.recorded and kept.recorded.is_new and kept.recorded.last is None
    said = [_FIRST.format(ledger.name)] if begun else []
    if kept.eyes:
        said += sentences_on_eyes(kept.eyes, report)
    return replace(
        report,
        notices=(*(Notice(text=text) for text in said), *report.notices, *kept.notices),
        since_last=_since(kept.recorded) if kept.recorded else None,
    )


def only_new(report: Report) -> Report:
    """The report with those issues alone that the last draft did not have; their ranks stay."""
    since = report.since_last
    if since is None:
        return replace(report, notices=(*report.notices, Notice(text=_NOTHING_BEFORE)))
    keys = {*since.new_keys, *since.back_keys}
    return replace(
        report,
        issues=tuple(issue for issue in report.issues if issue.key in keys),
        since_last=replace(since, new_only=True),
    )


def _draft(outcome: Outcome, report: Report) -> Draft:
    return draft_of(
        report,
        date=datetime.now().astimezone().replace(microsecond=0),
        settings=outcome.settings or Settings(),
        rulings=outcome.rulings,
        edition=_edition(report),
    )


def _edition(report: Report) -> str:
    """What tells the checks from others: what they found. Changed checks that find the same are the same."""
    standing = (each.issue for each in report.let_stand)
    keys = sorted(f"{issue.tier} {issue.key}" for issue in (*report.issues, *standing))
    return hashlib.sha256("\n".join(keys).encode()).hexdigest()[:16]


def _since(recorded: Recorded) -> SinceLast | None:
    if recorded.last is None:
        return None
    now, last, errors = recorded.draft, recorded.last, recorded.draft.of_errors
    # Of those let stand, the ones that still were errors to mend in the last draft.
    left = last.errors - sum(
        (errors.fixed, errors.gone_with_text, errors.no_longer_raised, errors.still_there)
    )
    return SinceLast(
        draft=now.number,
        last=last.number,
        days=days_between(last.date, now.date),
        errors=last.errors,
        queries=last.queries,
        fixed=errors.fixed,
        gone_with_text=errors.gone_with_text,
        no_longer_raised=errors.no_longer_raised,
        let_stand=max(0, min(left, errors.let_stand)),
        new=errors.new,
        back_again=errors.back_again,
        still_there=errors.still_there,
        new_keys=_keys(recorded.comparison.new),
        back_keys=_keys(recorded.comparison.back_again),
    )


def _keys(issues: Iterable[DraftIssue]) -> tuple[str, ...]:
    return tuple(issue.key for issue in issues)
