from __future__ import annotations

from pathlib import Path

import pytest

from proofkit.drafts.fresh_eyes import FreshEyes
from proofkit.drafts.keeping import keep
from proofkit.report import Report
from proofkit.reports.drafts.eyes import sentences_on_eyes
from tests.drafts.goat_drafts import draft, report_on
from tests.reports.goat import SPREADS

LATER = (*SPREADS[:9], "Far, far away a little boat turned, and came safely home.")
REPORT = report_on()


@pytest.fixture
def ledger(tmp_path: Path) -> Path:
    return tmp_path / "proofkit.db"


def eyes_on(
    ledger: Path, *mended: str, day: int, spreads: tuple[str, ...] = SPREADS
) -> FreshEyes | None:
    return keep(ledger, lambda: draft(*mended, day=day, spreads=spreads)).eyes


def said(eyes: FreshEyes, report: Report = REPORT) -> str:
    return " ".join(sentences_on_eyes(eyes, report))


def test_a_first_draft_and_the_same_again_have_no_last_look(ledger: Path) -> None:
    assert eyes_on(ledger, day=0) is None
    assert eyes_on(ledger, day=20) is None


def test_after_two_weeks_eyes_are_fresh(ledger: Path) -> None:
    eyes_on(ledger, day=0)
    rested = eyes_on(ledger, "the the", day=14)
    assert rested is not None
    assert (rested.days, rested.rested, rested.waiting) == (14, True, False)
    assert said(rested).startswith(
        "You last looked 14 days ago, so your eyes are fresh. Read it aloud"
    )


def test_what_waiting_is_worth_is_said_once(ledger: Path) -> None:
    eyes_on(ledger, day=0)
    told = [
        eyes_on(ledger, *mended, day=day)
        for day, mended in enumerate((("the the",), ("the the", "bucket .")), 1)
    ]
    assert [each.waiting for each in told if each] == [True, False]
    assert told[0] is not None
    assert "59 % of the wrong words" in said(told[0])
    assert "68 % after two weeks" in said(told[0])


def test_pages_that_never_changed_and_those_changed_since_they_were_clean(ledger: Path) -> None:
    eyes_on(ledger, day=0)
    eyes_on(ledger, "the the", day=1)
    eyes = eyes_on(ledger, "the the", "bucket .", day=40, spreads=LATER)
    assert eyes is not None
    # Pages count from the title page. Page 3 was mended in the second draft, 4 and 11 changed now;
    # 4 had a slip before.
    assert eyes.never_changed == (2, 5, 6, 7, 8, 9, 10)
    assert eyes.changed_clean == (11,)
    assert "beginning where slips hide: spreads 1 and 4–9, unchanged" in said(eyes)
    assert "then spread 10, changed after nothing was left to mend there; then the rest." in said(
        eyes
    )


def test_a_page_that_was_changed_and_changed_back_has_been_looked_at(ledger: Path) -> None:
    eyes_on(ledger, day=0, spreads=LATER)
    eyes_on(ledger, day=1)
    eyes = eyes_on(ledger, "the the", day=2, spreads=LATER)
    assert eyes is not None
    assert 11 not in eyes.never_changed
