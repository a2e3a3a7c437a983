"""A smaller run of ``tests.bench.simulated_author``: statuses against what the author did."""

from __future__ import annotations

import pytest

from proofkit.drafts.status import Status
from tests.bench.simulated_author import SEED, simulated


@pytest.mark.slow
def test_statuses_are_right_through_twelve_drafts_of_eight_books() -> None:
    tally = simulated(books=8, drafts=12, seed=SEED)
    print(f"{tally.total} statuses, {100 * tally.share:.2f} % right; wrong: {dict(tally.wrong)}")
    assert min(tally.truths[status] for status in Status if status in tally.truths) >= 20
    assert len(tally.truths) == 6
    assert tally.share >= 0.98
    assert tally.wrong[Status.STILL_THERE, Status.NEW] == 0
