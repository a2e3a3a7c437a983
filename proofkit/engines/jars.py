"""The grammar engine's files: which ones, whether they are here and whole, and how to get them.

The lock file beside this module names each file with its size and SHA-256. A file is fetched into
a folder of its own beside the others, verified, and only then moved to its place in one step: a
fetch may be interrupted anywhere, and two fetches may run at once.
"""

from __future__ import annotations

import errno
import hashlib
import shutil
import tempfile
import time
import tomllib
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor, as_completed
from contextlib import contextmanager
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from threading import Event, Lock

from proofkit.engines.folders import grammar_engine_folder
from proofkit.engines.trouble import EngineTrouble
from proofkit.progress import Progress

LOCK_FILE = Path(__file__).with_name("grammar-engine.lock.toml")
FETCH_STAGE = "Getting the grammar engine, once"

_AT_ONCE = 4
_TIMEOUT = 15  # seconds without an answer
_TRIES = 3
_STALE = 24 * 60 * 60  # seconds after which an unfinished fetch is taken for dead
_STAGING = "fetching-"
_AGAIN = "Connect to the internet once and run: proofkit engine fetch"


@dataclass(frozen=True, slots=True, kw_only=True)
class Jar:
    """One file of the engine; ``size`` in bytes."""

    group: str
    artifact: str
    version: str
    size: int
    sha256: str

    @property
    def name(self) -> str:
        """What the file is called."""
        return f"{self.artifact}-{self.version}.jar"

    def is_whole(self, file: Path) -> bool:
        """Whether ``file`` is this one, to the last byte."""
        try:
            if file.stat().st_size != self.size:
                return False
            with file.open("rb") as content:
                return hashlib.file_digest(content, "sha256").hexdigest() == self.sha256
        except OSError:
            return False


@dataclass(frozen=True, slots=True, kw_only=True)
class EngineLock:
    """The engine's version and all its files."""

    version: str
    jars: tuple[Jar, ...]

    @property
    def size(self) -> int:
        """How many bytes all files have."""
        return sum(jar.size for jar in self.jars)

    @property
    def folder(self) -> Path:
        """Where this version's files are kept on this computer."""
        return grammar_engine_folder(self.version)


@cache
def engine_lock() -> EngineLock:
    """What the lock file says."""
    entries = tomllib.loads(LOCK_FILE.read_text(encoding="utf-8"))
    return EngineLock(
        version=entries["version"], jars=tuple(Jar(**entry) for entry in entries["jar"])
    )


def missing_jars(lock: EngineLock) -> tuple[Jar, ...]:
    """The files that are not here, or not whole."""
    return tuple(jar for jar in lock.jars if not jar.is_whole(lock.folder / jar.name))


def ensure_jars(lock: EngineLock, progress: Progress) -> tuple[Path, ...]:
    """All files of the engine, whole; fetched where they are not here.

    Raises EngineTrouble if one can't be had, with the remedy; what was got until then is kept.
    """
    missing = missing_jars(lock)
    if missing:
        try:
            _fetch(missing, lock.folder, progress)
        except OSError as problem:
            raise EngineTrouble(_disk_trouble(problem, lock)) from problem
    return tuple(lock.folder / jar.name for jar in lock.jars)


def _disk_trouble(problem: OSError, lock: EngineLock) -> str:
    if problem.errno == errno.ENOSPC:
        return (
            f"The disk is full: the grammar engine needs {lock.size // 1_000_000} MB in "
            f"{lock.folder}. Make room and run: proofkit engine fetch"
        )
    return (
        f"The grammar engine can't be kept in {lock.folder} ({problem.strerror}). "
        "Set PROOFKIT_CACHE to a folder that you may write to."
    )


def _fetch(jars: Sequence[Jar], folder: Path, progress: Progress) -> None:
    folder.mkdir(parents=True, exist_ok=True)
    _sweep(folder)
    tally = _Tally(total=sum(jar.size for jar in jars), progress=progress)
    with _staging(folder) as staging, ThreadPoolExecutor(_AT_ONCE) as pool:
        fetches = [pool.submit(_fetch_one, jar, staging, folder, tally) for jar in jars]
        try:
            for fetch in as_completed(fetches):
                fetch.result()
        except BaseException:
            tally.stop()
            pool.shutdown(cancel_futures=True)
            raise


def _sweep(folder: Path) -> None:
    """Clear away what a fetch left that was ended by force."""
    for left in folder.glob(f"{_STAGING}*"):
        if time.time() - left.stat().st_mtime > _STALE:
            shutil.rmtree(left, ignore_errors=True)


@contextmanager
def _staging(folder: Path) -> Iterator[Path]:
    staging = Path(tempfile.mkdtemp(prefix=_STAGING, dir=folder))
    try:
        yield staging
    finally:
        shutil.rmtree(staging, ignore_errors=True)


class _Stopped(Exception):
    """Another file's fetch failed, or the author stopped it."""


class _Tally:
    """Counts the bytes of all fetches together, and stops them all when one fails."""

    def __init__(self, *, total: int, progress: Progress) -> None:
        self._total, self._done = total, 0
        self._progress = progress
        self._lock, self._stopped = Lock(), Event()

    def stop(self) -> None:
        """Let every running fetch end at its next piece."""
        self._stopped.set()

    def add(self, size: int) -> None:
        """Count some bytes more (or fewer, where a file begins again)."""
        if self._stopped.is_set():
            raise _Stopped
        with self._lock:
            self._done += size
            self._progress(FETCH_STAGE, self._done, self._total)


def _fetch_one(jar: Jar, staging: Path, folder: Path, tally: _Tally) -> None:
    for attempt in range(1, _TRIES + 1):
        before = _Counted(tally)
        try:
            file = _download(jar, Path(tempfile.mkdtemp(dir=staging)), before)
        except EngineTrouble:
            before.take_back()
            if attempt == _TRIES:
                raise
            continue
        file.replace(folder / jar.name)
        return


class _Counted:
    """The bytes of one attempt, so that a failed one can be taken back."""

    def __init__(self, tally: _Tally) -> None:
        self._tally, self._size = tally, 0

    def add(self, size: int) -> None:
        self._size += size
        self._tally.add(size)

    def take_back(self) -> None:
        self._tally.add(-self._size)


def _download(jar: Jar, staging: Path, counted: _Counted) -> Path:
    """Fetch one file into ``staging`` and verify it."""
    # Loaded only when something must be fetched: it costs a fifth of a second.
    import requests  # noqa: PLC0415
    from jgo.maven import MavenContext, PythonResolver  # noqa: PLC0415

    @contextmanager
    def watch(_name: str, _total: int) -> Iterator[Callable[[int], None]]:
        yield counted.add

    resolver = PythonResolver(progress_callback=watch)
    context = MavenContext(resolver=resolver, repo_cache=staging, timeout=_TIMEOUT)
    try:
        component = context.project(jar.group, jar.artifact).at_version(jar.version)
        file: Path = component.artifact().resolve()
    except (requests.RequestException, RuntimeError) as problem:
        raise EngineTrouble(f"The grammar engine could not be fetched. {_AGAIN}") from problem
    if not jar.is_whole(file):
        raise EngineTrouble(
            f"A file of the grammar engine came damaged ({jar.name}) and was thrown away. {_AGAIN}"
        )
    return file
