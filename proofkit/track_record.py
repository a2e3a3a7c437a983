"""How often each check has been right, and what that makes of its confidence.

A check's confidence is its author's estimate, which may differ from place to place: how often the book
does it the other way, how rare the word is, inside speech or not. Its track record, in
``wordlists/track-record.tsv``, is what became of it on planted and on marked text. The two are joined by
their odds: the record moves all of a check's estimates by the same factor, and what a place says of
itself keeps its say. Few counts move little: the estimate stands for eight of them. What was raised in
the novels without a slip counts half: they are a hundred years old, and of what was looked at there about
every second one is a slip of the print, or was good style then.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from functools import cache

from proofkit.issue import Issue
from proofkit.words.data import wordlist

_WORTH_OF_ESTIMATE = 8
_LEAST, _MOST = 0.02, 0.98  # nothing is certain
_OF_NOVELS = 0.5
# A check that is wrong three times for each time it is right says nothing.
_TOO_OFTEN_FALSE = 0.25


@dataclass(frozen=True, slots=True, kw_only=True)
class Record:
    """What became of a check's issues: ``claimed`` is the mean of the confidence that they had."""

    claimed: float
    true: float
    false: float

    @property
    def share_true(self) -> float:
        """The share that was true, the check's own estimate counted as eight issues more."""
        shown = self.true + self.false
        estimate = _WORTH_OF_ESTIMATE * self.claimed
        return (self.true + estimate) / (shown + _WORTH_OF_ESTIMATE)


def tempered(
    issues: Iterable[Issue], records: Mapping[str, Record] | None = None
) -> tuple[Issue, ...]:
    """The issues with the confidence that their checks' records bear out.

    Those that the record makes less likely than one in four are left out. ``records`` are those that
    come with proofkit unless others are given.
    """
    known = shipped_records() if records is None else records
    joined = (_joined(issue, known.get(issue.check)) for issue in issues)
    return tuple(issue for issue in joined if issue.confidence >= _TOO_OFTEN_FALSE)


@cache
def shipped_records() -> Mapping[str, Record]:
    """The record of each check that was ever seen to speak, planted and marked text together."""
    lines = wordlist("track-record.tsv").read_text("utf-8").splitlines()
    return dict(_record(line.split("\t")) for line in lines if not line.startswith("#"))


def _record(row: list[str]) -> tuple[str, Record]:
    check, claimed, *counts = row
    planted, in_stories, in_novels, marked_true, marked_false = map(int, counts)
    return check, Record(
        claimed=float(claimed),
        true=planted + marked_true,
        false=in_stories + _OF_NOVELS * in_novels + marked_false,
    )


def _joined(issue: Issue, record: Record | None) -> Issue:
    if record is None:
        return issue
    odds = _odds(issue.confidence) * _odds(record.share_true) / _odds(record.claimed)
    return replace(issue, confidence=round(odds / (1 + odds), 3))


def _odds(share: float) -> float:
    within = min(max(share, _LEAST), _MOST)
    return within / (1 - within)
