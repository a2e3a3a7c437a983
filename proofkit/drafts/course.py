"""The course of a book's drafts: the line of each, its issues by family, its words by spread."""

from __future__ import annotations

import sqlite3
from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from proofkit.drafts.draft import SpreadWords
from proofkit.drafts.ledger_file import reading
from proofkit.drafts.status import Status
from proofkit.drafts.summary import Summary, summaries_in


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """A draft on its way.

    ``families``      how many open issues there are of each family of checks; only those with any
    ``spread_words``  in the book's order; empty where the spreads are unknown
    """

    draft: Summary
    families: Mapping[str, int]
    spread_words: tuple[SpreadWords, ...]


def course_of(file: Path) -> tuple[Step, ...]:
    """The drafts in a ledger, in their order. Raises Damaged or Unusable, also where there is no ledger."""
    with reading(file) as base:
        drafts, families, spreads = summaries_in(base), _families(base), _spreads(base)
    return tuple(
        Step(
            draft=draft,
            families=families.get(draft.number, {}),
            spread_words=tuple(spreads.get(draft.number, ())),
        )
        for draft in drafts
    )


def _families(base: sqlite3.Connection) -> Mapping[int, Counter[str]]:
    found: dict[int, Counter[str]] = {}
    rows = base.execute(
        'SELECT draft, "check", count(*) FROM issue JOIN matter ON matter.id = issue.matter '
        "WHERE status <> ? GROUP BY 1, 2",
        [Status.LET_STAND],
    )
    for draft, check, issues in rows:
        found.setdefault(draft, Counter())[check.partition("/")[0]] += issues
    return found


def _spreads(base: sqlite3.Connection) -> Mapping[int, list[SpreadWords]]:
    found: dict[int, list[SpreadWords]] = {}
    rows = base.execute("SELECT draft, spread, words FROM spread ORDER BY draft, place")
    for draft, spread, words in rows:
        found.setdefault(draft, []).append(SpreadWords(spread=spread, words=words))
    return found
