"""Nothing ends in a traceback: what goes wrong becomes one sentence and an exit code."""

from __future__ import annotations

import functools
import os
import shutil
import sys
import textwrap
import traceback
from collections.abc import Callable
from enum import IntEnum
from pathlib import Path
from typing import ParamSpec

import typer

from proofkit.problem import Unusable

_Given = ParamSpec("_Given")


class Exit(IntEnum):
    """What proofkit's exit code means."""

    CLEAN = 0  # nothing wrong in the tier of errors
    ERRORS = 1  # errors found
    UNUSABLE = 2  # input or a command that can't be used, or output that can't be written
    INCOMPLETE = 3  # finished, but something was not checked
    STOPPED = 130  # stopped from outside, with Ctrl-C or by the system
    UNHEARD = 141  # whoever was to read the output went away


def guarded(command: Callable[_Given, Exit]) -> Callable[_Given, None]:
    """The command, leaving with the exit code that it returns, or with that of what went wrong."""

    @functools.wraps(command)
    def safely(*args: _Given.args, **options: _Given.kwargs) -> None:
        raise typer.Exit(_outcome(lambda: command(*args, **options)))

    return safely


def say(sentence: str) -> None:
    """Tell the author something beside the report; in a window, no word is broken at its edge."""
    if sys.stderr.isatty():
        width = shutil.get_terminal_size().columns
        sentence = textwrap.fill(sentence, width, break_long_words=False, break_on_hyphens=False)
    print(sentence, file=sys.stderr, flush=True)


def _outcome(command: Callable[[], Exit]) -> Exit:
    try:
        code = command()
        sys.stdout.flush()
    except Unusable as problem:
        say(str(problem))
        return Exit.UNUSABLE
    except KeyboardInterrupt:
        say("Stopped. Your manuscript is as it was, and nothing was left half written.")
        return Exit.STOPPED
    except BrokenPipeError:
        _silence(sys.stdout.fileno())
        return Exit.UNHEARD
    except Exception as fault:  # noqa: BLE001 - whatever it is, an author must not meet a traceback
        say(_own_fault(fault))
        return Exit.UNUSABLE
    return code


def _own_fault(fault: Exception) -> str:
    if isinstance(fault, OSError) and fault.strerror:
        where = f" ({fault.filename})" if fault.filename else ""
        return f"The system would not go on: {fault.strerror}{where}. Your manuscript is as it was."
    place = traceback.extract_tb(fault.__traceback__)[-1]
    return (
        "proofkit made a mistake of its own and stopped; your manuscript is as it was. To have it mended, "
        f"send this line to its makers: {type(fault).__name__}: {fault} "
        f"({Path(place.filename).name}, line {place.lineno})"
    )


def _silence(stream: int) -> None:
    """Let Python's own last flush go nowhere, so that it doesn't complain in its turn."""
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, stream)
    os.close(nowhere)
