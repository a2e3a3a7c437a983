"""A registry of two small files on this machine, that can be told to misbehave."""

from __future__ import annotations

import hashlib
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer

import pytest

from proofkit.engines.jars import EngineLock, Jar

CONTENT = {"hen-1.0.jar": b"cluck " * 50_000, "owl-2.0.jar": b"hoot " * 50_000}


def lock(version: str = "test") -> EngineLock:
    """The lock of those two files."""
    return EngineLock(version=version, jars=tuple(_jar(name) for name in sorted(CONTENT)))


def _jar(name: str) -> Jar:
    artifact, _, version = name.removesuffix(".jar").partition("-")
    content = CONTENT[name]
    return Jar(
        group="org.barn",
        artifact=artifact,
        version=version,
        size=len(content),
        sha256=hashlib.sha256(content).hexdigest(),
    )


class Registry:
    """Serves the files. ``served`` are the names asked for; ``spoil`` and ``break_off`` misbehave."""

    def __init__(self) -> None:
        self.served: list[str] = []
        self.spoil: set[str] = set()
        self.break_off: set[str] = set()

    def answer(self, handler: BaseHTTPRequestHandler) -> None:
        """Answer one request."""
        name = handler.path.rpartition("/")[2]
        if name not in CONTENT:
            handler.send_error(404)
            return
        self.served.append(name)
        content = CONTENT[name]
        handler.send_response(200)
        handler.send_header("Content-Length", str(len(content)))
        handler.end_headers()
        if name in self.break_off:
            handler.wfile.write(content[: len(content) // 2])
            handler.close_connection = True
            return
        handler.wfile.write(content.upper() if name in self.spoil else content)


@contextmanager
def running_registry(monkeypatch: pytest.MonkeyPatch) -> Iterator[Registry]:
    """A registry that fetches go to instead of the real one."""
    from jgo.maven import _core  # noqa: PLC0415

    registry = Registry()

    class Handler(BaseHTTPRequestHandler):
        def do_GET(self) -> None:
            registry.answer(self)

        def log_message(self, *_: object) -> None:
            pass

    server = ThreadingHTTPServer(("127.0.0.1", 0), Handler)
    thread = threading.Thread(target=server.serve_forever, args=(0.02,), daemon=True)
    thread.start()
    address = f"http://127.0.0.1:{server.server_port}"
    monkeypatch.setitem(_core.DEFAULT_REMOTE_REPOS, "central", address)
    try:
        yield registry
    finally:
        server.shutdown()
        server.server_close()
        thread.join()
