"""Which issue of the newest draft is which of the drafts before."""

from __future__ import annotations

from collections.abc import Sequence

from proofkit.drafts.draft import Draft
from proofkit.drafts.status import Comparison, Ended, Standing, Status


def compared(history: Sequence[Draft], now: Draft) -> Comparison:
    """The newest draft against all before it, the oldest first."""
    comparison, last = Comparison(issues=()), None
    for draft in (*history, now):
        comparison = compared_with_last(last, draft, past=comparison.past)
        last = draft
    return comparison


def compared_with_last(last: Draft | None, now: Draft, *, past: Sequence[Ended] = ()) -> Comparison:
    """The newest draft against the last one and what had ended by then, as ``Comparison.past`` says."""
    keys = {issue.key for issue in last.issues} if last else set()
    return Comparison(
        issues=tuple(
            Standing(
                issue=issue,
                status=Status.LET_STAND
                if issue.let_stand
                else (Status.STILL_THERE if issue.key in keys else Status.NEW),
            )
            for issue in now.issues
        ),
        past=tuple(past),
    )
