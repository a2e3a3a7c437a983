"""The ledger of a book's drafts: what was checked, draft after draft, and what became of each issue.

A draft is recorded when its text, its settings, its checks or the rulings in force are none that the
ledger has; the same again adds nothing. ``schema.py`` says how it is kept.
"""

from __future__ import annotations

import sqlite3
import zlib
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass, replace
from pathlib import Path

import msgspec

from proofkit.drafts import rows_read, rows_write
from proofkit.drafts.draft import Draft
from proofkit.drafts.ledger_file import reading, writing
from proofkit.drafts.matching import compared_with_last
from proofkit.drafts.status import Comparison, Standing
from proofkit.drafts.summary import Summary, summaries_in
from proofkit.drafts.trouble import Damaged


@dataclass(frozen=True, slots=True, kw_only=True)
class Recorded:
    """A draft in the ledger.

    ``is_new``      whether it was added now
    ``last``        the draft that it was compared with; None for the first one
    ``comparison``  how it stands against the drafts before. For one that was there already ``ended``,
        ``past`` and what an issue was before are empty, and ``draft`` has the counts
    """

    draft: Summary
    is_new: bool
    last: Summary | None
    comparison: Comparison


def record(file: Path, draft: Draft) -> Recorded:
    """Record a draft in the ledger in ``file``, which is made if need be.

    Raises Damaged or Unusable; then nothing of the draft was recorded.
    """
    if file.exists():
        with reading(file) as base, _made_out(file):
            if number := _known(base, draft):
                return _as_recorded(base, number)
    with writing(file) as base, _made_out(file), transaction(base):
        # Another check may have recorded it since.
        known = _known(base, draft)
        number, found = (known, None) if known else add(base, draft)
        kept = _as_recorded(base, number)
    return kept if found is None else replace(kept, is_new=True, comparison=found)


def add(base: sqlite3.Connection, draft: Draft) -> tuple[int, Comparison]:
    """Write a draft after all others, within a transaction: its number, and how it compares."""
    last = rows_read.read(base, _last(base, draft))
    found = compared_with_last(last, draft, past=rows_read.read_past(base))
    number = newest(base) + 1
    against = last.number if last else None
    rows_write.write(base, replace(draft, number=number), against, found)
    return number, found


def summaries(file: Path) -> tuple[Summary, ...]:
    """All drafts in their order. Raises Damaged or Unusable, also where there is no ledger."""
    with reading(file) as base, _made_out(file):
        return summaries_in(base)


def drafts(file: Path) -> Iterator[Draft]:
    """All drafts whole, in their order, one at a time. Raises as ``summaries``."""
    with reading(file) as base, _made_out(file):
        for number in range(1, newest(base) + 1):
            draft = rows_read.read(base, number)
            if draft:
                yield draft


def draft_numbered(file: Path, number: int) -> Draft | None:
    """The draft of that number, or None. Raises as ``summaries``."""
    with reading(file) as base, _made_out(file):
        return rows_read.read(base, number)


def is_known(base: sqlite3.Connection, draft: Draft) -> bool:
    """Whether the ledger has the draft already, no less completely checked."""
    return _known(base, draft) is not None


@contextmanager
def transaction(base: sqlite3.Connection) -> Iterator[None]:
    """All that is written inside is kept, or nothing of it."""
    base.execute("BEGIN IMMEDIATE")
    try:
        yield
        base.execute("COMMIT")
    except BaseException:
        with suppress(sqlite3.Error):
            base.execute("ROLLBACK")
        raise


@contextmanager
def _made_out(file: Path) -> Iterator[None]:
    """Rows that are there but make no sense are damage, too."""
    try:
        yield
    except (msgspec.MsgspecError, zlib.error, ValueError, TypeError) as error:
        raise Damaged(file) from error


def _known(base: sqlite3.Connection, draft: Draft) -> int | None:
    """The number under which the ledger has the draft already, no less completely checked.

    What a check that could not be finished found differs from what there is to be found: a text that was
    checked completely once is known, whatever was asked.
    """
    found = base.execute(
        "SELECT number FROM draft JOIN conditions ON conditions.id = draft.conditions "
        "WHERE text_digest = ?1 AND rulings = ?2 AND complete >= ?3 AND (asked_digest = ?4 OR complete > ?3) "
        "ORDER BY asked_digest = ?4 DESC, number DESC LIMIT 1",
        (draft.text_digest, rows_write.rulings_of(draft), draft.complete, draft.asked_digest),
    ).fetchone()
    return found[0] if found else None


def _as_recorded(base: sqlite3.Connection, number: int) -> Recorded:
    here = summaries_in(base, number)[0]
    issues = (
        Standing(issue=issue, status=status, from_change=changed)
        for issue, status, changed in rows_read.read_issues(base, number)
    )
    return Recorded(
        draft=here,
        is_new=False,
        last=summaries_in(base, here.against)[0] if here.against else None,
        comparison=Comparison(issues=tuple(issues)),
    )


def _last(base: sqlite3.Connection, draft: Draft) -> int:
    """The draft to compare with: the newest, but for one of which less was checked. 0 for none."""
    complete = base.execute("SELECT max(number) FROM draft WHERE complete").fetchone()[0]
    return (complete if draft.complete and complete else None) or newest(base)


def newest(base: sqlite3.Connection) -> int:
    """The number of the newest draft; 0 for none."""
    number: int | None = base.execute("SELECT max(number) FROM draft").fetchone()[0]
    return number or 0
