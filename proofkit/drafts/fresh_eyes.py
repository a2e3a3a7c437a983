"""What a rest is worth, and where slips hide: pages that nobody has looked at with fresh eyes.

In an experiment writers found 59 % of the wrong words in a text of their own after twenty minutes and
68 % after two weeks; in a text of somebody else's 76 % and 83 % (M. Daneman and M. Stainton, The
generation effect in reading and proofreading, Reading and Writing 5, 1993, 297–313).
"""

from __future__ import annotations

import sqlite3
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from proofkit.book import Role
from proofkit.drafts.changes import changes_between
from proofkit.drafts.draft import Draft, DraftPage
from proofkit.drafts.ledger import draft_numbered
from proofkit.drafts.ledger_file import reading

RESTED = 14  # days from which on eyes are fresh; what the experiment tried
FOUND_SOON, FOUND_RESTED = 59, 68  # of a hundred wrong words that are words, in one's own text
_ENOUGH = 3  # drafts from which on a page that never changed tells something


@dataclass(frozen=True, slots=True, kw_only=True)
class FreshEyes:
    """How a draft is to be looked at, its pages given by their places.

    ``days``            days since the last look; None for a first draft
    ``waiting``         whether to say what waiting is worth: once, with the second draft of a book
    ``never_changed``   pages of story as they were in the first draft; none before the third
    ``changed_clean``   pages that had nothing open in the last draft and were changed since
    """

    days: int | None
    waiting: bool = False
    never_changed: tuple[int, ...] = ()
    changed_clean: tuple[int, ...] = ()

    @property
    def rested(self) -> bool:
        """Whether the last look was long enough ago for fresh eyes."""
        return self.days is not None and self.days >= RESTED


def fresh_eyes(file: Path, number: int, last: int, days: int) -> FreshEyes:
    """How draft ``number`` is to be looked at, ``days`` after the ``last`` one.

    Raises Damaged or Unusable where the ledger in ``file`` can't be read.
    """
    now, before = draft_numbered(file, number), draft_numbered(file, last)
    if now is None or before is None:
        return FreshEyes(days=days)
    with reading(file) as base:
        never = _never_changed(base, number) if number >= _ENOUGH else ()
    return FreshEyes(
        days=days,
        waiting=number == 2 and days < RESTED,
        never_changed=never,
        changed_clean=tuple(_changed_clean(before, now)),
    )


def _never_changed(base: sqlite3.Connection, number: int) -> tuple[int, ...]:
    """The pages whose text every draft had, wherever it stood."""
    rows = base.execute(
        "SELECT number FROM page WHERE draft = ?1 AND role = ?2 AND words > 0 AND text IN "
        "(SELECT text FROM page WHERE draft <= ?1 GROUP BY text HAVING count(DISTINCT draft) = ?1) "
        "ORDER BY number",
        (number, str(Role.STORY)),
    )
    return tuple(place for (place,) in rows)


def _changed_clean(before: Draft, now: Draft) -> Sequence[int]:
    blotted = {issue.page for issue in before.open}
    old, new = _not_in(before, now), _not_in(now, before)
    return [
        new[change.now.number - 1].number
        for change in changes_between(_of(before, old), _of(now, new))
        if change.was
        and change.now
        and change.words
        and old[change.was.number - 1].number not in blotted
    ]


def _not_in(draft: Draft, other: Draft) -> list[DraftPage]:
    """The pages whose text the other draft has not: to compare a novel whole takes a second."""
    texts = set(other.texts)
    return [page for page in draft.pages if page.text not in texts]


def _of(draft: Draft, pages: Sequence[DraftPage]) -> Draft:
    """The draft as if it had these pages alone."""
    numbered = (replace(page, number=number) for number, page in enumerate(pages, 1))
    return replace(draft, pages=tuple(numbered))
