from __future__ import annotations

import io
import time

import pytest

from proofkit.cli import progress_bar as module
from proofkit.cli.progress_bar import fetch_explained, progress_bar
from proofkit.engines.jars import FETCH_STAGE


class Window(io.StringIO):
    """A terminal that remembers what was written on it."""

    def isatty(self) -> bool:
        return True


def opened(monkeypatch: pytest.MonkeyPatch, *, patience: float) -> Window:
    """A window in place of standard error; opened inside a test, where pytest leaves it alone."""
    window = Window()
    monkeypatch.setattr("sys.stderr", window)
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.setattr(module, "_PATIENCE", patience)
    return window


def until(window: Window, words: str) -> bool:
    for _ in range(200):
        if words in window.getvalue():
            return True
        time.sleep(0.02)
    return False


def test_a_watched_stage_is_shown_after_a_while_and_cleared_away(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    window = opened(monkeypatch, patience=0.05)
    with progress_bar() as bar:
        bar("Reading the sentences", 3, 12)
        assert until(window, "Reading the sentences")
        bar("Reading the grammar", 0, 0)
        assert until(window, "Reading the grammar")
    assert window.getvalue().endswith("\x1b[2K")


def test_quick_work_shows_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    window = opened(monkeypatch, patience=60.0)
    with progress_bar() as bar:
        bar("Reading the sentences", 3, 12)
    assert window.getvalue() == ""


def test_what_nobody_watches_is_not_drawn(monkeypatch: pytest.MonkeyPatch) -> None:
    pipe = io.StringIO()
    monkeypatch.setattr("sys.stderr", pipe)
    monkeypatch.setattr(module, "_PATIENCE", 0.0)
    with progress_bar() as bar:
        bar("Reading the sentences", 3, 12)
        time.sleep(0.1)
    assert pipe.getvalue() == ""


def test_the_first_fetch_is_explained_once_even_in_a_pipe(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    pipe = io.StringIO()
    monkeypatch.setattr("sys.stderr", pipe)
    with progress_bar(fetch_explained()) as bar:
        bar(FETCH_STAGE, 1, 3)
        bar(FETCH_STAGE, 2, 3)
    assert pipe.getvalue().count("This happens once") == 1
    assert "MB" in pipe.getvalue()
