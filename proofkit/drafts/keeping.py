"""Keeping a draft without ever standing in the way of a check: what goes wrong becomes a sentence."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from proofkit.drafts.draft import Draft
from proofkit.drafts.fresh_eyes import FreshEyes, fresh_eyes
from proofkit.drafts.ledger import Recorded, record
from proofkit.drafts.summary import days_between
from proofkit.drafts.trouble import Damaged, copies_beside, set_aside
from proofkit.problem import Notice, Unusable


@dataclass(frozen=True, slots=True, kw_only=True)
class Kept:
    """What became of a draft: as recorded, or None, and what the author should know of the ledger.

    ``eyes`` says how a draft that was added now is to be looked at; None for any other, and for the first.
    """

    recorded: Recorded | None
    eyes: FreshEyes | None = None
    notices: tuple[Notice, ...] = ()


def keep(file: Path, make: Callable[[], Draft]) -> Kept:
    """Record the draft that is made in the ledger in ``file``.

    It raises nothing: a check must hand over its report, whatever becomes of its ledger.
    """
    notices = []
    recorded = eyes = None
    try:
        draft = make()
        before = _identity(file)
        try:
            recorded = record(file, draft)
        except Damaged:
            notices += _begun_anew(file, before, draft.date.date())
            recorded = record(file, draft)
        if recorded.is_new and recorded.last:
            days = days_between(recorded.last.date, recorded.draft.date)
            eyes = fresh_eyes(file, recorded.draft.number, recorded.last.number, days)
    except Unusable as problem:
        notices.append(Notice(text=f"{problem} This draft was not recorded."))
    except Exception as fault:  # noqa: BLE001 - a mistake of ours here must not cost the author the report
        notices.append(Notice(text=_own_fault(file, fault)))
    return Kept(recorded=recorded, eyes=eyes, notices=(*notices, *_about_copies(file)))


def _begun_anew(file: Path, before: object, today: date) -> list[Notice]:
    """Set the damaged ledger aside, unless another check has done so meanwhile."""
    if _identity(file) != before:
        return []
    kept = set_aside(file, today)
    text = (
        f"The ledger {file} was damaged and is kept as “{kept.name}”; a new one was begun. If you have a "
        "copy of the folder from before, proofkit drafts import brings its drafts back."
    )
    return [Notice(text=text)]


def _identity(file: Path) -> tuple[int, int] | None:
    """What tells the file from another that took its name."""
    try:
        found = file.stat()
    except OSError:
        return None
    return found.st_dev, found.st_ino


def _about_copies(file: Path) -> list[Notice]:
    copies = copies_beside(file)
    if not copies:
        return []
    named = " and ".join(f"“{copy.name}”" for copy in copies[:3])
    lie, ledgers = ("lies", "another ledger") if len(copies) == 1 else ("lie", "other ledgers")
    text = (
        f"Beside {file.name} {lie} {named}, {ledgers} of this book: a syncing service makes such a copy when "
        f"two computers write at once. Drafts are recorded in {file.name}; to bring in those of the copy: "
        f'proofkit drafts import "{copies[0]}"'
    )
    return [Notice(text=text)]


def _own_fault(file: Path, fault: Exception) -> str:
    return (
        f"proofkit made a mistake of its own and did not record this draft in {file}; the report is as it "
        f"should be. To have it mended, send this line to its makers: {type(fault).__name__}: {fault}"
    )
