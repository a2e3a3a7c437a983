"""Marked errors of real books mended one at a time: the counts change by what was mended, and no more."""

from __future__ import annotations

import pytest

from tests.bench._texts import BOOKS
from tests.bench.mended_books import mended


@pytest.mark.engine
@pytest.mark.slow
@pytest.mark.skipif(not BOOKS.exists(), reason="the forty books are not beside the project")
def test_each_error_mended_changes_the_counts_by_exactly_what_it_took() -> None:
    tally = mended(sorted(BOOKS.glob("*.md"))[::6])
    print(f"{tally.mended} errors mended, {tally.fixed} issues fixed, {tally.right} statuses right")
    assert tally.mended >= 15
    assert tally.fixed >= 10
    assert tally.wrong == []
    assert tally.exact == tally.mended
