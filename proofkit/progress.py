"""How long work tells how far it is, without knowing who shows it."""

from __future__ import annotations

from typing import Protocol


class Progress(Protocol):
    """Called now and then with the stage in plain words and how much of it is done."""

    def __call__(self, stage: str, done: int, total: int) -> None: ...


def silent(stage: str, done: int, total: int) -> None:
    """A progress that nobody looks at."""
