"""Processes on this machine, as tests look at them."""

from __future__ import annotations

import time

import psutil


def javas() -> list[int]:
    """The Java processes that this one started."""
    mine = psutil.Process().children(recursive=True)
    return [process.pid for process in mine if process.name() == "java"]


def kill(process: int) -> None:
    """End it by force, and wait until it has ended."""
    ended = psutil.Process(process)
    ended.kill()
    psutil.wait_procs([ended], timeout=5)


def is_gone(process: int, *, within: float = 10) -> bool:
    """Whether the process ends in so many seconds; one that only its parent remembers has ended."""
    limit = time.monotonic() + within
    while _runs(process):
        if time.monotonic() >= limit:
            return False
        time.sleep(0.01)
    return True


def _runs(process: int) -> bool:
    try:
        return bool(psutil.Process(process).status() != psutil.STATUS_ZOMBIE)
    except psutil.NoSuchProcess:
        return False
