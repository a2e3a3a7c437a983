"""How far the work is: a bar on standard error, for whoever watches and has waited a second."""

from __future__ import annotations

import sys
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from threading import Lock, Timer
from typing import TYPE_CHECKING

from proofkit.cli.guard import say

if TYPE_CHECKING:
    # Loaded when a bar is shown: a quick run doesn't wait for it.
    from rich.progress import Progress as Bar
    from rich.progress import TaskID

_PATIENCE = 1.0  # seconds until a bar is more help than noise


class ProgressBar:
    """A progress to hand to long work; it may be told from any thread.

    ``explained`` has a sentence for a stage that needs one; it is said once, watched or not.
    """

    def __init__(self, explained: Mapping[str, str]) -> None:
        self._unsaid = dict(explained)
        self._watched = sys.stderr.isatty()
        self._lock = Lock()
        self._latest = ("", 0, 0)
        self._timer: Timer | None = None
        self._shown: tuple[Bar, TaskID] | None = None

    def __call__(self, stage: str, done: int, total: int) -> None:
        with self._lock:
            if stage in self._unsaid:
                say(self._unsaid.pop(stage))
            self._latest = (stage, done, total)
            if self._shown:
                self._update()
            elif self._watched and self._timer is None:
                self._timer = Timer(_PATIENCE, self._show)
                self._timer.daemon = True
                self._timer.start()

    def clear(self) -> None:
        """Take the bar away, so that something else can be printed; the next word brings it back."""
        with self._lock:
            if self._timer:
                self._timer.cancel()
            if self._shown:
                self._shown[0].stop()
            self._timer = self._shown = None

    def _show(self) -> None:
        from rich.progress import BarColumn, Progress, TextColumn  # noqa: PLC0415 - see above

        from proofkit.cli.screen import console_on  # noqa: PLC0415 - likewise
        from proofkit.reports.terminal.theme import INK  # noqa: PLC0415 - likewise

        with self._lock:
            if self._timer is None:
                return  # cleared while this waited
            bar = Progress(
                TextColumn("{task.description}"),
                BarColumn(style="", complete_style=INK, finished_style=INK, pulse_style=INK),
                console=console_on(sys.stderr),
                transient=True,
                redirect_stdout=False,  # reports go their own way
            )
            self._shown = (bar, bar.add_task(""))
            self._update()
            bar.start()

    def _update(self) -> None:
        if self._shown:
            (bar, task), (stage, done, total) = self._shown, self._latest
            bar.update(task, description=stage, completed=done, total=total or None)


@contextmanager
def progress_bar(explained: Mapping[str, str] | None = None) -> Iterator[ProgressBar]:
    """A progress bar that is gone when its work has ended, however it ended."""
    bar = ProgressBar(explained or {})
    try:
        yield bar
    finally:
        bar.clear()


def fetch_explained() -> Mapping[str, str]:
    """What is fetched before the first check, and that it happens once."""
    from proofkit.engines.jars import FETCH_STAGE, engine_lock  # noqa: PLC0415 - help doesn't need it

    size = f"{engine_lock().size / 1_000_000:.0f} MB"
    return {
        FETCH_STAGE: f"Getting the grammar engine ({size}), which reads the sentences of a manuscript for "
        "slips. This happens once; then it stays on this computer."
    }
