import errno
import gc
import os
import threading
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from proofkit.engines.folders import cache_folder
from proofkit.engines.grammar_engine import GrammarEngine
from proofkit.engines.jars import (
    FETCH_STAGE,
    EngineLock,
    engine_lock,
    ensure_jars,
    missing_jars,
)
from proofkit.engines.lock import NEEDED
from proofkit.engines.trouble import EngineTrouble
from proofkit.progress import silent
from tests.engines.registry import CONTENT, Registry, lock, running_registry

# The library that fetches leaves a connection that broke off to the garbage collector.
pytestmark = pytest.mark.filterwarnings("ignore::pytest.PytestUnraisableExceptionWarning")


@pytest.fixture(autouse=True)
def _own_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    monkeypatch.setenv("PROOFKIT_CACHE", str(tmp_path / "cache"))
    yield
    gc.collect()


@pytest.fixture
def registry(monkeypatch: pytest.MonkeyPatch) -> Iterator[Registry]:
    with running_registry(monkeypatch) as running:
        yield running


@pytest.fixture
def barn() -> EngineLock:
    return lock()


def _names(folder: Path) -> list[str]:
    return sorted(file.name for file in folder.iterdir())


def test_the_lock_names_every_file_by_size_and_sum() -> None:
    jars = engine_lock().jars
    assert {jar.artifact for jar in jars} == NEEDED
    assert len({jar.name for jar in jars}) == len(jars) == 45
    assert all(len(jar.sha256) == 64 and jar.size > 0 for jar in jars)
    assert 40_000_000 < engine_lock().size < 50_000_000


def test_a_fetch_brings_all_files_and_nothing_else(registry: Registry, barn: EngineLock) -> None:
    seen: list[tuple[str, int, int]] = []
    files = ensure_jars(barn, lambda *step: seen.append(step))
    assert [file.read_bytes() for file in files] == [CONTENT[file.name] for file in files]
    assert _names(barn.folder) == sorted(CONTENT)
    assert barn.folder.parent == cache_folder()
    assert seen[-1] == (FETCH_STAGE, barn.size, barn.size)
    assert sorted(registry.served) == sorted(CONTENT)


def test_what_is_here_is_not_fetched_again(registry: Registry, barn: EngineLock) -> None:
    ensure_jars(barn, silent)
    registry.served.clear()
    ensure_jars(barn, silent)
    assert registry.served == []


@pytest.mark.parametrize("damage", [b"", b"cluck", CONTENT["hen-1.0.jar"].upper()])
def test_a_damaged_file_is_fetched_again_alone(
    registry: Registry, barn: EngineLock, damage: bytes
) -> None:
    ensure_jars(barn, silent)
    registry.served.clear()
    (barn.folder / "hen-1.0.jar").write_bytes(damage)
    assert [jar.name for jar in missing_jars(barn)] == ["hen-1.0.jar"]
    ensure_jars(barn, silent)
    assert registry.served == ["hen-1.0.jar"]
    assert missing_jars(barn) == ()


def test_a_file_that_comes_damaged_is_never_put_in_place(
    registry: Registry, barn: EngineLock
) -> None:
    registry.spoil = {"owl-2.0.jar"}
    with pytest.raises(EngineTrouble, match=r"damaged \(owl-2\.0\.jar\).*proofkit engine fetch"):
        ensure_jars(barn, silent)
    assert "owl-2.0.jar" not in _names(barn.folder)


def test_a_fetch_that_breaks_off_is_completed_by_the_next(
    registry: Registry, barn: EngineLock
) -> None:
    registry.break_off = {"owl-2.0.jar"}
    with pytest.raises(EngineTrouble, match="proofkit engine fetch"):
        ensure_jars(barn, silent)
    assert not [name for name in _names(barn.folder) if name.startswith("fetching-")]
    registry.break_off.clear()
    ensure_jars(barn, silent)
    assert missing_jars(barn) == ()


def test_one_broken_connection_is_tried_again(registry: Registry, barn: EngineLock) -> None:
    registry.break_off = {"owl-2.0.jar"}
    seen: list[int] = []

    def progress(stage: str, done: int, total: int) -> None:
        seen.append(done)
        assert (stage, total) == (FETCH_STAGE, barn.size)
        if registry.served.count("owl-2.0.jar") == 2:
            registry.break_off.clear()

    ensure_jars(barn, progress)
    assert missing_jars(barn) == ()
    assert seen[-1] == barn.size


def test_without_a_network_the_remedy_is_named(
    monkeypatch: pytest.MonkeyPatch, barn: EngineLock
) -> None:
    with running_registry(monkeypatch):
        pass  # what listened there is gone
    from jgo.maven import _core  # noqa: PLC0415

    monkeypatch.setitem(_core.DEFAULT_REMOTE_REPOS, "central", "http://127.0.0.1:9")
    with pytest.raises(EngineTrouble, match="Connect to the internet once and run"):
        ensure_jars(barn, silent)


def test_a_full_disk_is_named(
    monkeypatch: pytest.MonkeyPatch, registry: Registry, barn: EngineLock
) -> None:
    def full(_self: Path, _target: Path) -> Path:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(Path, "replace", full)
    with pytest.raises(EngineTrouble, match=r"disk is full.*Make room"):
        ensure_jars(barn, silent)
    assert registry.served
    assert _names(barn.folder) == []


def test_a_folder_that_cannot_be_written_is_named(tmp_path: Path, barn: EngineLock) -> None:
    (tmp_path / "cache").write_text("a file where the folder should be")
    with pytest.raises(EngineTrouble, match="Set PROOFKIT_CACHE"):
        ensure_jars(barn, silent)


def test_two_fetches_at_once_do_no_harm(registry: Registry, barn: EngineLock) -> None:
    both = [threading.Thread(target=ensure_jars, args=(barn, silent)) for _ in range(2)]
    for fetch in both:
        fetch.start()
    for fetch in both:
        fetch.join()
    assert registry.served
    assert missing_jars(barn) == ()
    assert _names(barn.folder) == sorted(CONTENT)


def test_what_a_killed_fetch_left_is_cleared_away_after_a_day(
    registry: Registry, barn: EngineLock
) -> None:
    old, young = barn.folder / "fetching-old", barn.folder / "fetching-young"
    for left in (old, young):
        left.mkdir(parents=True)
        (left / "half.jar").write_bytes(b"clu")
    two_days_ago = time.time() - 2 * 24 * 60 * 60
    os.utime(old, (two_days_ago, two_days_ago))
    ensure_jars(barn, silent)
    assert registry.served
    assert not old.exists()
    assert young.exists()


def test_a_stop_ends_the_fetch(registry: Registry, barn: EngineLock) -> None:
    def stop(stage: str, done: int, total: int) -> None:
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        ensure_jars(barn, stop)
    assert registry.served
    assert missing_jars(barn) == barn.jars


def test_a_run_that_ends_does_not_wait_for_its_fetch(
    registry: Registry, barn: EngineLock, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("proofkit.engines.grammar_engine.engine_lock", lambda: barn)
    began = threading.Event()

    def slow(stage: str, done: int, total: int) -> None:
        began.set()
        time.sleep(0.2)

    engine = GrammarEngine(address=None, progress=slow)
    engine.start()
    assert began.wait(10)
    closing = time.monotonic()
    engine.close()
    assert time.monotonic() - closing < 5  # all pieces together would take fifteen seconds
    assert registry.served
    assert missing_jars(barn) == barn.jars
