from dataclasses import replace

import pytest

from proofkit.book import Span
from proofkit.checks.registry import check_names
from proofkit.issue import Issue, Tier
from proofkit.track_record import Record, shipped_records, tempered

ISSUE = Issue(
    check="spelling/misspelling",
    tier=Tier.ERROR,
    span=Span(page=1, start=0, end=3),
    quote="teh",
    message="not in the dictionary",
    confidence=0.8,
)


def confidence(issue: Issue, record: Record) -> float:
    [tempered_issue] = tempered([issue], {issue.check: record})
    return tempered_issue.confidence


def test_a_check_that_was_as_right_as_it_claimed_keeps_its_confidence() -> None:
    assert confidence(ISSUE, Record(claimed=0.8, true=80, false=20)) == pytest.approx(0.8)


def test_a_check_that_was_wrong_more_often_says_less() -> None:
    assert confidence(ISSUE, Record(claimed=0.8, true=10, false=10)) < 0.65


def test_a_check_that_was_right_more_often_says_more() -> None:
    assert confidence(ISSUE, Record(claimed=0.8, true=50, false=1)) > 0.9


def test_few_counts_move_little() -> None:
    assert confidence(ISSUE, Record(claimed=0.8, true=0, false=1)) > 0.7


def test_what_a_place_says_of_itself_keeps_its_say() -> None:
    record = Record(claimed=0.7, true=20, false=20)
    surer, less_sure = ISSUE, replace(ISSUE, confidence=0.5)
    assert confidence(surer, record) > confidence(less_sure, record)


def test_a_check_that_is_mostly_false_is_silent() -> None:
    assert tempered([ISSUE], {ISSUE.check: Record(claimed=0.8, true=0, false=60)}) == ()


def test_a_check_without_a_record_is_taken_at_its_word() -> None:
    assert tempered([ISSUE], {}) == (ISSUE,)


def test_the_shipped_records_are_of_checks_that_there_are() -> None:
    assert set(shipped_records()) <= set(check_names())


def test_the_shipped_records_count_what_was_seen() -> None:
    assert sum(record.true + record.false for record in shipped_records().values()) > 500
