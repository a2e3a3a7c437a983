"""``proofkit engine``, with an engine of two small files that come from nowhere."""

from __future__ import annotations

import hashlib
from collections.abc import Sequence
from pathlib import Path

import pytest
from typer.testing import CliRunner, Result

from proofkit.cli.main import app
from proofkit.engines import jars
from proofkit.engines.jars import EngineLock, Jar
from proofkit.engines.trouble import EngineTrouble
from proofkit.progress import Progress

CONTENTS = {"bell": b"dong" * 250_000, "rope": b"creak" * 200_000}


@pytest.fixture
def lock(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> EngineLock:
    lock = EngineLock(
        version="6.8",
        jars=tuple(
            Jar(
                group="org.example",
                artifact=name,
                version="1",
                size=len(content),
                sha256=hashlib.sha256(content).hexdigest(),
            )
            for name, content in CONTENTS.items()
        ),
    )
    monkeypatch.setenv("PROOFKIT_CACHE", str(tmp_path / "cache"))
    monkeypatch.setattr(jars, "engine_lock", lambda: lock)
    return lock


def put(lock: EngineLock, *names: str) -> None:
    lock.folder.mkdir(parents=True, exist_ok=True)
    for jar in lock.jars:
        if jar.artifact in names:
            (lock.folder / jar.name).write_bytes(CONTENTS[jar.artifact])


def engine(command: str) -> Result:
    return CliRunner().invoke(app, ["engine", command])


def test_status_tells_what_is_there(lock: EngineLock) -> None:
    assert "is not on this computer yet (2 MB)" in engine("status").stdout
    put(lock, "bell")
    assert "1 of its 2 files are missing or damaged" in engine("status").stdout
    put(lock, "bell", "rope")
    assert engine("status").stdout == (
        f"The grammar engine 6.8 is there and whole: 2 MB in {lock.folder}\n"
    )


def test_a_damaged_file_is_not_taken_for_whole(lock: EngineLock) -> None:
    put(lock, "bell", "rope")
    (lock.folder / lock.jars[0].name).write_bytes(b"ding" * 250_000)
    assert "1 of its 2 files are missing or damaged" in engine("status").stdout


def test_fetch_gets_what_is_missing_and_says_where_it_is(
    lock: EngineLock, monkeypatch: pytest.MonkeyPatch
) -> None:
    def deliver(missing: Sequence[Jar], _folder: Path, progress: Progress) -> None:
        progress(jars.FETCH_STAGE, 1, 2)
        put(lock, *(jar.artifact for jar in missing))

    monkeypatch.setattr(jars, "_fetch", deliver)
    first = engine("fetch")
    assert first.exit_code == 0
    assert first.stderr.count("This happens once") == 1
    assert "is there and whole" in first.stdout
    assert "This happens once" not in engine("fetch").stderr


@pytest.mark.usefixtures("lock")
def test_no_network_is_one_sentence_and_2(monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_arguments: object) -> None:
        raise EngineTrouble("There is no network. Connect once and run: proofkit engine fetch")

    monkeypatch.setattr(jars, "_fetch", refuse)
    result = engine("fetch")
    assert result.exit_code == 2
    assert result.stderr == "There is no network. Connect once and run: proofkit engine fetch\n"
