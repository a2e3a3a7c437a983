import sqlite3
from pathlib import Path

import pytest

from proofkit.engines import memory as memory_module
from proofkit.engines.memory import Memory


@pytest.fixture
def file(tmp_path: Path) -> Path:
    return tmp_path / "cache" / "memory.sqlite3"


def test_what_is_remembered_is_recalled_in_another_run(file: Path) -> None:
    first = Memory(file)
    first.remember_many("a", {b"1": b"one", b"2": b"two"})
    first.close()
    second = Memory(file)
    assert second.recall_many("a", [b"1", b"2", b"3"]) == {b"1": b"one", b"2": b"two"}
    assert second.recall("b", b"1") is None
    second.close()


def test_many_keys_at_once(file: Path) -> None:
    values = {str(n).encode(): b"x" for n in range(2500)}
    memory = Memory(file)
    memory.remember_many("a", values)
    assert memory.recall_many("a", values) == values
    memory.close()


def test_a_damaged_file_is_set_aside_and_begun_anew(file: Path) -> None:
    file.parent.mkdir()
    file.write_bytes(b"This is not a database at all. " * 100)
    memory = Memory(file)
    memory.remember("a", b"1", b"one")
    assert memory.recall("a", b"1") == b"one"
    memory.close()
    assert file.with_name("memory.sqlite3.damaged").exists()


def test_damage_inside_the_file_costs_one_run_its_memory_and_no_more(file: Path) -> None:
    memory = Memory(file)
    memory.remember_many("a", {str(n).encode(): bytes(500) for n in range(500)})
    memory.close()
    content = bytearray(file.read_bytes())
    content[4096:] = b"\xff" * (len(content) - 4096)
    file.write_bytes(content)
    damaged = Memory(file)
    assert damaged.recall("a", b"1") is None
    damaged.remember("a", b"1", b"one")
    damaged.close()
    again = Memory(file)
    again.remember("a", b"1", b"one")
    assert again.recall("a", b"1") == b"one"
    again.close()


def test_a_place_that_cannot_be_written_means_no_memory(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("not a folder")
    memory = Memory(tmp_path / "file" / "memory.sqlite3")
    memory.remember("a", b"1", b"one")
    assert memory.recall("a", b"1") is None
    memory.close()


class _FullDisk(sqlite3.Connection):
    def executemany(self, *_: object) -> sqlite3.Cursor:
        raise sqlite3.OperationalError("database or disk is full")


def test_a_full_disk_is_silently_no_memory(file: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    memory = Memory(file)
    memory.remember("a", b"1", b"one")
    memory.close()
    connect = sqlite3.connect
    monkeypatch.setattr("sqlite3.connect", lambda *a, **k: connect(*a, **k, factory=_FullDisk))
    full = Memory(file)
    full.remember("a", b"2", b"two")
    full.close()
    monkeypatch.undo()
    after = Memory(file)
    assert after.recall_many("a", [b"1", b"2"]) == {b"1": b"one"}
    after.close()


def test_two_runs_at_once_share_the_file(file: Path) -> None:
    one, other = Memory(file), Memory(file)
    for n in range(20):
        one.remember("a", f"one {n}".encode(), b"1")
        other.remember("a", f"other {n}".encode(), b"2")
    assert one.recall("a", b"other 19") == b"2"
    assert other.recall("a", b"one 19") == b"1"
    one.close()
    other.close()


def test_a_file_that_another_run_keeps_locked_is_not_waited_for(
    file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(memory_module, "_WAIT", 0.05)
    memory = Memory(file)
    holder = sqlite3.connect(file, isolation_level=None)
    holder.execute("BEGIN EXCLUSIVE")
    memory.remember("a", b"1", b"one")
    assert memory.recall("a", b"1") is None
    holder.execute("ROLLBACK")
    holder.close()
    assert not file.with_name("memory.sqlite3.damaged").exists()


def test_the_least_recently_used_go_first(file: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    now = 1_000_000_000.0
    monkeypatch.setattr("time.time", lambda: now)
    memory = Memory(file, limit=1000)
    for n in range(4):
        memory.remember("a", bytes([n]), bytes(200))
        now += 60
    now += 2 * 24 * 60 * 60
    assert memory.recall("a", b"\x00") == bytes(200)
    memory.remember("a", b"\x09", bytes(400))
    kept = memory.recall_many("a", [bytes([n]) for n in range(10)])
    assert set(kept) == {b"\x00", b"\x09"}
    memory.close()


def test_no_file_no_memory() -> None:
    memory = Memory(None)
    memory.remember("a", b"1", b"one")
    assert memory.recall("a", b"1") is None
    memory.close()
