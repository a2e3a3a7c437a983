"""The author's terminal as rich sees it: in two inks, its text taken as it is."""

from __future__ import annotations

from typing import TextIO

from rich.console import Console

from proofkit.reports.terminal.theme import THEME


def console_on(stream: TextIO) -> Console:
    """A console that prints what it is given: no colours of its own, no signs turned into pictures."""
    return Console(file=stream, theme=THEME, highlight=False, emoji=False, markup=False)


def sheet(stream: TextIO, width: int) -> Console:
    """A console without colour, ``width`` characters wide, whatever the terminal is."""
    return Console(
        file=stream,
        theme=THEME,
        width=width,
        color_system=None,
        force_terminal=False,
        highlight=False,
        emoji=False,
        markup=False,
    )
