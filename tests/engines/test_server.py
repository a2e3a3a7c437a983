"""That no process is left behind, whatever ends proofkit. A sleeping script stands for Java."""

import os
import signal
import subprocess
import sys
import time
from pathlib import Path
from threading import Event

import pytest

from proofkit.engines.server import JAVA_VARIABLE, start_server
from proofkit.engines.trouble import EngineTrouble
from tests.engines import processes

pytestmark = pytest.mark.skipif(
    os.name != "posix", reason="the stand-in for Java is a shell script"
)

_PROGRAM = """
import os, sys
from proofkit.engines.server import start_server
server = start_server([])
sys.stdin.read()
{then}
"""


@pytest.fixture
def sleeper(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A stand-in for Java that notes its process and never answers."""
    note = tmp_path / "process"
    _stand_in(tmp_path, monkeypatch, f"echo $$ > {note}; exec sleep 600")
    return note


def _stand_in(folder: Path, monkeypatch: pytest.MonkeyPatch, does: str) -> None:
    script = folder / "java"
    script.write_text(f"#!/bin/sh\n{does}\n")
    script.chmod(0o755)
    monkeypatch.setenv(JAVA_VARIABLE, str(script))


def _noted(note: Path) -> int:
    limit = time.monotonic() + 10
    while time.monotonic() < limit:
        if note.exists() and note.read_text().strip():
            return int(note.read_text())
        time.sleep(0.01)
    raise AssertionError("the stand-in was never started")


def test_closing_ends_the_process(sleeper: Path) -> None:
    server = start_server([])
    process = _noted(sleeper)
    assert server.runs
    server.close()
    assert not server.runs
    assert processes.is_gone(process)
    server.close()  # a second time does no harm


@pytest.mark.parametrize(
    ("then", "sent"),
    [
        ("", signal.SIGKILL),
        ("", signal.SIGTERM),
        ("", signal.SIGINT),
        ("", None),
        ("raise ValueError", None),
        ("os._exit(3)", None),
    ],
)
def test_whatever_ends_us_ends_the_process(
    sleeper: Path, then: str, sent: signal.Signals | None
) -> None:
    ours = subprocess.Popen(
        [sys.executable, "-c", _PROGRAM.format(then=then)],
        stdin=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
    )
    process = _noted(sleeper)
    assert not processes.is_gone(process, within=0)
    if sent:
        ours.send_signal(sent)
    ours.communicate(b"go on", timeout=10)
    assert processes.is_gone(process)


def test_a_java_that_fails_is_told_with_the_remedy(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    _stand_in(tmp_path, monkeypatch, "echo 'Error: A fatal exception has occurred' >&2; exit 1")
    began = time.monotonic()
    with pytest.raises(EngineTrouble, match=r"did not start.*Java 17 or newer"):
        start_server([]).await_answer(Event())
    assert time.monotonic() - began < 10


def test_a_java_that_is_not_there_is_told_with_the_remedy(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv(JAVA_VARIABLE, str(tmp_path / "nowhere"))
    with pytest.raises(EngineTrouble, match="Java 17 or newer"):
        start_server([]).await_answer(Event())


def test_waiting_ends_when_the_run_is_closing(sleeper: Path) -> None:
    server = start_server([])
    process = _noted(sleeper)
    closing = Event()
    closing.set()
    with pytest.raises(EngineTrouble):
        server.await_answer(closing)
    assert processes.is_gone(process)
