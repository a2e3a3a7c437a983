"""How ``proofkit.toml`` is written: one proofkit at a time, wholly or not at all, nothing of it changed.

A ruling is added after the last line of the file, and all that stood there stays to the letter. The
new file is written beside the old one and takes its place in one step. The lock is the system's own: it
is let go when a process ends, however it ends. It lies in proofkit's cache, not among the manuscripts.
"""

from __future__ import annotations

import hashlib
import os
import shutil
import tempfile
import time
import tomllib
from collections.abc import Iterator, Sequence
from contextlib import contextmanager, suppress
from pathlib import Path

from filelock import FileLock, Timeout

from proofkit.engines.folders import cache_folder
from proofkit.own_file import read_own_file
from proofkit.problem import Unusable
from proofkit.rulings.entry import Entry, as_toml, as_values
from proofkit.rulings.ruling import TABLE, rulings_in

HEAD = (
    "# The settings of one book, for proofkit. Every manuscript in this folder is a draft of it.\n"
)

_PATIENCE = 10.0  # seconds for another proofkit to finish writing
_ATTEMPTS = 20
_PAUSE = 0.05  # seconds; Windows replaces no file that somebody is reading just then


def add(file: Path, entries: Sequence[Entry]) -> tuple[Entry, ...]:
    """Add the entries to a book's own file, which is made if it is not there; those that were added.

    One that the file has already, perhaps since a moment ago, is left out. Raises Unusable where the
    file is broken or can't be written; then nothing has changed.
    """
    with _alone(file):
        own = read_own_file(file)
        kept = rulings_in(own)
        keys = {ruling.key for ruling in kept if ruling.key}
        checks = {ruling.check for ruling in kept if ruling.about_check}
        new = tuple(
            entry
            for entry in entries
            if entry.key not in keys and (entry.key or entry.check not in checks)
        )
        if new:
            old = file.read_bytes() if own else HEAD.encode()
            content = _with(old, new)
            _make_sure(file, old, content, new)
            _replace(file, content)
    return new


def begin(file: Path, text: str) -> None:
    """Write a book's own file. Raises Unusable if there is one, or it can't be written."""
    with _alone(file):
        if file.exists() or file.is_symlink():
            raise Unusable(
                f"{file} is there already, and was left as it is. To change a choice, open it in any text "
                "editor and save it again."
            )
        _replace(file, text.encode())


def _with(old: bytes, entries: Sequence[Entry]) -> bytes:
    """The content with the entries after it, its lines ended as they are."""
    end = "\r\n" if b"\r\n" in old else "\n"
    gap = "" if not old or old.endswith(b"\n") else "\n"
    added = gap + "".join(f"\n{as_toml(entry)}" for entry in entries)
    return old + added.replace("\n", end).encode()


def _make_sure(file: Path, old: bytes, new: bytes, entries: Sequence[Entry]) -> None:
    """Nothing is written that would not be read again as it was meant."""
    expected = tomllib.loads(old.decode("utf-8-sig"))
    rulings = [*expected.get(TABLE, []), *map(as_values, entries)]
    try:
        if tomllib.loads(new.decode("utf-8-sig")) == expected | {TABLE: rulings}:
            return
    except tomllib.TOMLDecodeError:
        pass
    raise Unusable(
        f"{file} can't be added to, and was left as it is: write each ruling in it under a line [[{TABLE}]] "
        "of its own, then try again."
    )


@contextmanager
def _alone(file: Path) -> Iterator[None]:
    """Until this ends no other proofkit writes the file."""
    try:
        with FileLock(_lock_file(file), timeout=_PATIENCE):
            yield
    except Timeout:
        raise Unusable(
            f"Another proofkit is writing {file} and doesn't finish. Nothing was changed; try again when it "
            "has ended."
        ) from None


def _lock_file(file: Path) -> Path:
    name = f"{hashlib.sha256(os.fsencode(file.resolve())).hexdigest()[:20]}.lock"
    for folder in (cache_folder() / "locks", Path(tempfile.gettempdir()) / "proofkit-locks"):
        with suppress(OSError):
            folder.mkdir(parents=True, exist_ok=True)
            if os.access(folder, os.W_OK):
                return folder / name
    raise Unusable(
        f"{file} can't be written, because there is no room for a lock in the cache folder."
    )


def _replace(file: Path, content: bytes) -> None:
    """Put the content in the place of the file, or of the one that it is a link to, in one step."""
    target = file.resolve()
    part = target.with_name(
        f".{target.name}.part"
    )  # whatever a broken run left there is written over
    try:
        with part.open("wb") as new:
            new.write(content)
            new.flush()
            os.fsync(new.fileno())
        if target.exists():
            shutil.copymode(target, part)
        _move(part, target)
    except OSError as error:
        why = error.strerror or str(error)
        raise Unusable(
            f"{file} could not be written ({why[:1].lower()}{why[1:]}), and is as it was. Make the folder "
            "one that you may write in, then try again."
        ) from error
    finally:
        with suppress(OSError):
            part.unlink(missing_ok=True)


def _move(part: Path, target: Path) -> None:
    for _ in range(_ATTEMPTS):
        try:
            part.replace(target)
        except PermissionError:
            time.sleep(_PAUSE)
        else:
            return
    part.replace(target)
