"""What the engines said before, so that a text that did not change is not asked again.

The memory is a convenience: when its file is damaged it begins anew, and when it can't be read or
written there is none. Nothing that goes wrong here ever stops a run.
"""

from __future__ import annotations

import sqlite3
import time
from collections.abc import Iterable, Mapping, Sequence
from contextlib import suppress
from pathlib import Path

# 40 picture books fill about half a megabyte.
LIMIT = 64 * 1024 * 1024  # bytes

_DAY = 24 * 60 * 60
_WAIT = 2.0  # seconds for another proofkit to finish writing
_AT_ONCE = 500  # keys in one question
_TABLE = """
CREATE TABLE IF NOT EXISTS answers (
    kind TEXT NOT NULL, key BLOB NOT NULL, value BLOB NOT NULL, used INTEGER NOT NULL,
    PRIMARY KEY (kind, key)
) WITHOUT ROWID
"""
_BY_USE = "CREATE INDEX IF NOT EXISTS by_use ON answers (used)"
_REMEMBER = "INSERT OR REPLACE INTO answers (kind, key, value, used) VALUES (?, ?, ?, ?)"
_SIZE = "SELECT coalesce(sum(length(value)), 0) FROM answers"
_FORGET = """
DELETE FROM answers WHERE (kind, key) IN (
    SELECT kind, key FROM (
        SELECT kind, key, sum(length(value)) OVER (ORDER BY used DESC, kind, key) AS size
        FROM answers
    ) WHERE size > ?
)
"""


class Memory:
    """Answers by kind and key, in one file. ``None`` for a file remembers nothing."""

    def __init__(self, file: Path | None, *, limit: int = LIMIT) -> None:
        self._file, self._limit = file, limit
        self._base = _opened(file) if file else None

    def recall(self, kind: str, key: bytes) -> bytes | None:
        """The value under that key, or None."""
        return self.recall_many(kind, [key]).get(key)

    def recall_many(self, kind: str, keys: Iterable[bytes]) -> dict[bytes, bytes]:
        """The values that are known, by key."""
        wanted = list(dict.fromkeys(keys))
        known: dict[bytes, bytes] = {}
        for at in range(0, len(wanted), _AT_ONCE):
            known |= self._recalled(kind, wanted[at : at + _AT_ONCE])
        return known

    def remember(self, kind: str, key: bytes, value: bytes) -> None:
        """Keep one value."""
        self.remember_many(kind, {key: value})

    def remember_many(self, kind: str, values: Mapping[bytes, bytes]) -> None:
        """Keep values, in one step; the least recently used go when there are too many."""
        if self._base is None or not values:
            return
        now = int(time.time())
        rows = [(kind, key, value, now) for key, value in values.items()]
        try:
            with self._base:
                self._base.executemany(_REMEMBER, rows)
                if self._base.execute(_SIZE).fetchone()[0] > self._limit:
                    # A little more than asked, so that it isn't done every time.
                    self._base.execute(_FORGET, [self._limit * 3 // 4])
        except sqlite3.Error as problem:
            self._give_up(problem)

    def close(self) -> None:
        """Let go of the file."""
        if self._base is not None:
            with suppress(sqlite3.Error):
                self._base.close()
            self._base = None

    def _recalled(self, kind: str, keys: Sequence[bytes]) -> dict[bytes, bytes]:
        if self._base is None:
            return {}
        marks = ",".join("?" * len(keys))
        # Only question marks are put into the sentence.
        question = f"SELECT key, value, used FROM answers WHERE kind = ? AND key IN ({marks})"  # noqa: S608
        try:
            rows = self._base.execute(question, [kind, *keys]).fetchall()
        except sqlite3.Error as problem:
            self._give_up(problem)
            return {}
        self._touch(kind, [key for key, _, used in rows if time.time() - used > _DAY])
        return {key: value for key, value, _ in rows}

    def _touch(self, kind: str, keys: Sequence[bytes]) -> None:
        """Note that these are still used; a day is exact enough, and most runs write nothing."""
        if self._base is None or not keys:
            return
        with suppress(sqlite3.Error), self._base:
            self._base.executemany(
                "UPDATE answers SET used = ? WHERE kind = ? AND key = ?",
                [(int(time.time()), kind, key) for key in keys],
            )

    def _give_up(self, problem: sqlite3.Error) -> None:
        """Go on without a memory; a damaged file is set aside for the next run."""
        self.close()
        if self._file and _is_damage(problem):
            _set_aside(self._file)


def _opened(file: Path) -> sqlite3.Connection | None:
    try:
        return _connected(file)
    except sqlite3.Error as problem:
        if not _is_damage(problem):
            return None
    except OSError:
        return None
    _set_aside(file)
    try:
        return _connected(file)
    except (sqlite3.Error, OSError):
        return None


def _connected(file: Path) -> sqlite3.Connection:
    file.parent.mkdir(parents=True, exist_ok=True)
    # What it keeps tells of manuscripts: it is the user's alone.
    file.touch(mode=0o600)
    base = sqlite3.connect(file, timeout=_WAIT)
    try:
        with base:
            base.execute(_TABLE)
            base.execute(_BY_USE)
    except sqlite3.Error:
        base.close()
        raise
    return base


def _is_damage(problem: sqlite3.Error) -> bool:
    """Whether the file itself is at fault, not the disk, the rights or another process."""
    # Its subclasses tell of something else (a full disk, a wrong question); this one does not.
    return type(problem) is sqlite3.DatabaseError


def _set_aside(file: Path) -> None:
    with suppress(OSError):
        file.replace(file.with_name(f"{file.name}.damaged"))
        # What was half written belongs to the old file and would spoil the new one.
        file.with_name(f"{file.name}-journal").unlink(missing_ok=True)
