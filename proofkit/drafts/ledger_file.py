"""The ledger's file: opened, made, brought up to date, and set aside when it is damaged.

While a draft is written the file is in SQLite's write-ahead mode and held by one proofkit alone, which
needs no shared memory and so works in folders of a network or a syncing service too. At rest it is one
file in the ordinary mode: any program can read it, in a folder that can't be written to as well, and
whatever copies the folder copies the whole ledger.
"""

from __future__ import annotations

import shutil
import sqlite3
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from proofkit.drafts.migrations import bring_up_to_date
from proofkit.drafts.schema import APPLICATION, MIGRATIONS
from proofkit.drafts.trouble import (
    Damaged,
    NotWritable,
    in_plain_words,
    made_by_another,
    made_by_newer,
)
from proofkit.own_file import FILE_NAME
from proofkit.problem import Unusable

LEDGER = "proofkit.db"
LAYOUT = len(MIGRATIONS)

_WAIT = 20.0  # seconds for another proofkit to finish writing; it takes much less than one
_MAGIC = b"SQLite format 3\x00"
_HEADER = 100  # bytes; see "The Database Header" in SQLite's description of its file format
_SIDE_FILES = ("-journal", "-wal")


def ledger_of(manuscript: Path) -> Path | None:
    """Where the ledger of a manuscript's book is or will be; None where it lies in no book's folder."""
    folder = manuscript.parent
    return folder / LEDGER if (folder / FILE_NAME).is_file() else None


@contextmanager
def writing(file: Path) -> Iterator[sqlite3.Connection]:
    """The ledger in ``file`` to be written, made first if need be; nobody else has it meanwhile.

    Raises Damaged where the file is no database any more, and Unusable, with the file as it was, where
    it can't be written or a newer proofkit made it.
    """
    _refuse_strangers(file)
    with _told(file):
        base = sqlite3.connect(file, timeout=_WAIT, isolation_level=None)
        try:
            _hold(base)
            bring_up_to_date(base, file, MIGRATIONS)
            base.execute("PRAGMA journal_mode = WAL")
            yield base
        finally:
            _put_away(base)


@contextmanager
def reading(file: Path) -> Iterator[sqlite3.Connection]:
    """The ledger in ``file`` to be read. Raises Damaged or Unusable as ``writing``, and where there is none."""
    if not file.exists():
        raise Unusable(
            f"There is no ledger of drafts in {file.parent.resolve()} yet. Begin one with proofkit begin, then "
            "check a manuscript in that folder."
        )
    with _settled(file) as settled, _told(file):
        base = _connected_to_read(settled)
        try:
            yield base
        finally:
            base.close()


@contextmanager
def _settled(file: Path) -> Iterator[Path]:
    """The ledger's file, or a copy of it, up to date and with nothing that a stopped run left undone."""
    if _refuse_strangers(file) == LAYOUT and not _was_interrupted(file):
        yield file
        return
    if _put_right(file):
        yield file
        return
    # In a folder that can't be written to it is a copy that is set right.
    with tempfile.TemporaryDirectory(prefix="proofkit-") as folder:
        yield copied(file, Path(folder))


def _put_right(file: Path) -> bool:
    """Do what is left to do; False where the file can't be written."""
    try:
        with writing(file):
            return True
    except NotWritable:
        return False


def copied(file: Path, folder: Path) -> Path:
    """A copy in ``folder`` of the ledger in ``file``, up to date, with what a stopped run left undone done.

    Raises Damaged or Unusable as ``writing``.
    """
    _refuse_strangers(file)
    copy = folder / file.name
    with _told(file):
        for path in (file, *_left_behind(file)):
            shutil.copyfile(path, copy.with_name(path.name))
    with writing(copy):
        pass
    return copy


def _connected_to_read(file: Path) -> sqlite3.Connection:
    base = sqlite3.connect(
        f"{file.resolve().as_uri()}?mode=ro", uri=True, timeout=_WAIT, isolation_level=None
    )
    try:
        base.execute("BEGIN")
        base.execute("SELECT 1 FROM sqlite_schema")
    except BaseException:
        base.close()
        raise
    return base


@contextmanager
def _told(file: Path) -> Iterator[None]:
    """Turn what SQLite or the system says into a sentence for the author."""
    try:
        yield
    except (sqlite3.Error, OSError) as error:
        raise in_plain_words(error, file) from error


def _hold(base: sqlite3.Connection) -> None:
    # The lock is taken before it is made lasting: two that each had half of it would wait for each other.
    base.execute("BEGIN EXCLUSIVE")
    base.execute("PRAGMA locking_mode = EXCLUSIVE")
    base.execute("COMMIT")


def _put_away(base: sqlite3.Connection) -> None:
    """Close the file as one file. What can't be done now, on a full disk, the next run does."""
    with suppress(sqlite3.Error):
        if base.in_transaction:
            base.execute("ROLLBACK")
        base.execute("PRAGMA journal_mode = DELETE")
    with suppress(sqlite3.Error):
        base.close()


def _refuse_strangers(file: Path) -> int:
    """The layout of the ledger in the file, 0 for one to be made; found without touching it.

    Raises Unusable for what a newer proofkit or another program made, and Damaged for no database.
    """
    try:
        with file.open("rb") as opened:
            header = opened.read(_HEADER)
    except FileNotFoundError:
        return 0
    except OSError as error:
        raise in_plain_words(error, file) from error
    if not header:
        return 0
    if len(header) < _HEADER or not header.startswith(_MAGIC):
        raise Damaged(file)
    layout, application = (int.from_bytes(header[at : at + 4], "big") for at in (60, 68))
    if application not in (0, APPLICATION) or (layout and not application):
        raise Unusable(made_by_another(file))
    if layout > LAYOUT:
        raise Unusable(made_by_newer(file))
    return layout


def _was_interrupted(file: Path) -> bool:
    """Whether a run that wrote the ledger was stopped before it could put it away."""
    return bool(_left_behind(file))


def _left_behind(file: Path) -> list[Path]:
    beside = (file.with_name(f"{file.name}{ending}") for ending in _SIDE_FILES)
    return [path for path in beside if path.exists()]
