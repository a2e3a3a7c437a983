"""What can be the matter with a ledger, in the author's words; and a damaged one set aside."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable
from contextlib import suppress
from datetime import date
from pathlib import Path

from proofkit.problem import Unusable

_DAMAGE = (sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB)
_SIDE_FILES = ("-journal", "-wal", "-shm")
_WHY = {
    sqlite3.SQLITE_FULL: "the disk is full. Make room there, and check again",
    sqlite3.SQLITE_READONLY: "it can’t be written to. Check that you may write in that folder",
    sqlite3.SQLITE_PERM: "it can’t be written to. Check that you may write in that folder",
    sqlite3.SQLITE_CANTOPEN: "it can’t be opened. Check that you may write in that folder",
    sqlite3.SQLITE_BUSY: "another program keeps it open. Close that one, and check again",
    sqlite3.SQLITE_LOCKED: "another program keeps it open. Close that one, and check again",
    sqlite3.SQLITE_IOERR: "the disk would not take or give it. Check that it has room and is in order",
}
_CLOSED = (sqlite3.SQLITE_READONLY, sqlite3.SQLITE_PERM, sqlite3.SQLITE_CANTOPEN)
_OTHERWISE = "its disk or its folder did not allow it. Check both, then check again"


class Damaged(Unusable):
    """A ledger's file that is no database any more, or whose content can't be made out."""

    def __init__(self, file: Path) -> None:
        super().__init__(
            f"The ledger {file} is damaged and can’t be read. The next check in that folder sets it aside "
            "under a dated name and begins a new one; nothing of it is thrown away."
        )


class NotWritable(Unusable):
    """A ledger in a file or a folder that can't be written to."""


def in_plain_words(error: sqlite3.Error | OSError, file: Path) -> Damaged | Unusable:
    """What to raise instead of the database's or the system's own error."""
    if isinstance(error, OSError):
        why = (error.strerror or str(error)).lower()
        kind = NotWritable if isinstance(error, PermissionError) else Unusable
        return kind(f"The ledger {file} could not be used: {why}.")
    code = getattr(error, "sqlite_errorcode", sqlite3.SQLITE_ERROR) & 0xFF
    if code in _DAMAGE:
        return Damaged(file)
    kind = NotWritable if code in _CLOSED else Unusable
    return kind(f"The ledger {file} could not be used: {_WHY.get(code, _OTHERWISE)}.")


def made_by_newer(file: Path) -> str:
    """The sentence for a ledger of a proofkit that is newer than this one."""
    return (
        f"{file} was made by a newer proofkit than this one, so it was left untouched. Bring proofkit up "
        "to date on this computer."
    )


def made_by_another(file: Path) -> str:
    """The sentence for a database that is no ledger."""
    return (
        f"{file} was made by another program than proofkit, so it was left untouched. Give that file "
        "another name, and proofkit will begin its ledger there."
    )


def set_aside(file: Path, today: date) -> Path:
    """Give a damaged ledger a dated name, with what belongs to it; the name that it has now.

    Nothing is ever lost: where that name is taken, another one is. Raises Unusable if it can't be done.
    """
    kept = free_name(file, f"damaged {today.isoformat()}")
    try:
        for ending in _SIDE_FILES:
            beside = file.with_name(f"{file.name}{ending}")
            with suppress(FileNotFoundError):
                beside.replace(kept.with_name(f"{kept.name}{ending}"))
        file.replace(kept)
    except OSError as error:
        raise in_plain_words(error, file) from error
    return kept


def free_name(file: Path, what: str) -> Path:
    """A name beside the ledger that says what it is, and that nothing has yet."""
    names = (file.with_name(f"{file.stem} {what}{more}{file.suffix}") for more in _counted())
    return next(name for name in names if not name.exists())


def copies_beside(file: Path) -> tuple[Path, ...]:
    """Ledgers that a syncing service seems to have put beside this one, in the order of their names."""
    try:
        near = sorted(file.parent.glob(f"{file.stem}*{file.suffix}"))
    except OSError:
        return ()
    own = (f"{file.stem} damaged ", f"{file.stem} backup ")
    return tuple(path for path in near if path.name != file.name and not path.name.startswith(own))


def _counted() -> Iterable[str]:
    yield ""
    number = 1
    while True:
        number += 1
        yield f" ({number})"
