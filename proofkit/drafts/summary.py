"""A draft in one line: what the table of drafts says of it."""

from __future__ import annotations

import sqlite3
from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime

from proofkit.drafts.draft import SpreadWords
from proofkit.drafts.status import Counts, Status
from proofkit.issue import Tier


@dataclass(frozen=True, slots=True, kw_only=True)
class Summary:
    """A recorded draft without its texts and issues.

    ``errors``, ``queries``  those open, without what is let stand
    ``counts``               what became of the issues of both tiers; ``of_errors`` of the errors alone
    ``grade``                Flesch-Kincaid grade; None under 100 words
    ``heaviest``             the spread with the most words; None where the spreads are unknown
    ``against``              the number of the draft that it was compared with; None for the first
    """

    number: int
    date: datetime
    file: str
    title: str
    words: int
    pages: int
    spreads: int
    errors: int
    queries: int
    grade: float | None
    heaviest: SpreadWords | None
    counts: Counts
    of_errors: Counts
    against: int | None
    complete: bool
    text_digest: str

    @property
    def per_thousand(self) -> float:
        """Open errors and queries in a thousand words of story; 0 where there are no words."""
        return 1000 * (self.errors + self.queries) / self.words if self.words else 0.0


def days_between(before: datetime, after: datetime) -> int:
    """How many days lie between two moments, by the calendar of the later one."""
    return (after.date() - before.astimezone(after.tzinfo).date()).days


def summaries_in(base: sqlite3.Connection, number: int | None = None) -> tuple[Summary, ...]:
    """All drafts in a ledger, in their order, or the one of that number."""
    only = (1, number) if number else (0, 0)
    tallies = _tallies(base, only)
    heaviest = _heaviest(base, only)
    rows = base.execute(
        "SELECT number, checked_at, file, title, words, pages, spreads, errors, queries, grade, against, "
        "complete, text_digest FROM draft WHERE (number = ?2 OR NOT ?1) ORDER BY number",
        only,
    )
    return tuple(
        Summary(
            number=number,
            date=datetime.fromisoformat(date),
            file=file,
            title=title,
            words=words,
            pages=pages,
            spreads=spreads,
            errors=errors,
            queries=queries,
            grade=grade,
            heaviest=heaviest.get(number),
            counts=_counts(tallies[number], tuple(Tier)),
            of_errors=_counts(tallies[number], (Tier.ERROR,)),
            against=against,
            complete=bool(complete),
            text_digest=text_digest,
        )
        for number, date, file, title, words, pages, spreads, errors, queries, grade, against, complete, text_digest in rows
    )


_Tally = dict[tuple[Tier, Status], int]


def _tallies(base: sqlite3.Connection, only: tuple[int, int]) -> Mapping[int, _Tally]:
    found: dict[int, _Tally] = defaultdict(dict)
    rows = base.execute(
        "SELECT draft, tier, status, issues FROM tally WHERE (draft = ?2 OR NOT ?1)", only
    )
    for draft, tier, status, issues in rows:
        found[draft][Tier(tier), Status(status)] = issues
    return found


def _counts(tally: _Tally, tiers: tuple[Tier, ...]) -> Counts:
    sums = {status: sum(tally.get((tier, status), 0) for tier in tiers) for status in Status}
    return Counts(**{status.name.lower(): number for status, number in sums.items()})


def _heaviest(base: sqlite3.Connection, only: tuple[int, int]) -> Mapping[int, SpreadWords]:
    # Of equals the first: rows come by place, and the earlier one is kept.
    found: dict[int, SpreadWords] = {}
    rows = base.execute(
        "SELECT draft, spread, words FROM spread WHERE (draft = ?2 OR NOT ?1) ORDER BY draft, place",
        only,
    )
    for draft, spread, words in rows:
        if draft not in found or words > found[draft].words:
            found[draft] = SpreadWords(spread=spread, words=words)
    return found
