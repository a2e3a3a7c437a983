"""The command ``proofkit``. It imports next to nothing, so that help comes at once."""

from __future__ import annotations

import signal
from types import FrameType
from typing import Annotated

import typer

import proofkit
from proofkit.cli import (
    begin,
    check,
    drafts,
    engine,
    explain,
    handoff,
    reading,
    rulings_from,
    stet,
    stylesheet,
)
from proofkit.cli.streams import steady_streams

app = typer.Typer(
    help="A proofreading assistant for the manuscripts of children's books. It reads; it never changes them.",
    epilog="Begin with: proofkit check MANUSCRIPT",
    no_args_is_help=True,
    add_completion=False,
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
    context_settings={"help_option_names": ["-h", "--help"]},
)
app.command("begin", help=begin.HELP)(begin.begin)
app.command("check", help=check.HELP)(check.check)
app.command("reading", help=reading.HELP, short_help="Tell how a book reads, and for whom.")(
    reading.reading
)
app.command("stet", help=stet.HELP)(stet.stet)
app.command("rulings-from", help=rulings_from.HELP)(rulings_from.rulings_from)
app.command("explain", short_help="Tell what a check finds, and why it matters.")(explain.explain)
app.command(
    "stylesheet",
    help=stylesheet.HELP,
    short_help="Write down what the book decided, or mostly does.",
)(stylesheet.stylesheet)
app.command(
    "handoff",
    help=handoff.HELP,
    short_help="Make the pack that a human proofreader is given.",
)(handoff.handoff)
app.add_typer(
    drafts.app, name="drafts", short_help="List a book’s drafts: what was fixed, what is new."
)
app.add_typer(engine.app, name="engine")


def _tell_version(asked: bool) -> None:  # noqa: FBT001 - typer calls it so
    if asked:
        print(f"proofkit {proofkit.__version__}")
        raise typer.Exit


@app.callback()
def _proofkit(
    *,
    version: Annotated[
        bool,
        typer.Option(
            "--version", help="Say which proofkit this is.", callback=_tell_version, is_eager=True
        ),
    ] = False,
) -> None:
    del version  # the callback has answered already


def run() -> None:
    """The program."""
    steady_streams()
    for name in ("SIGTERM", "SIGHUP"):
        if hasattr(signal, name):
            signal.signal(getattr(signal, name), _stop)
    app(prog_name="proofkit")


def _stop(_number: int, _frame: FrameType | None) -> None:
    """A request to end, or a closed window, ends the run as Ctrl-C does: engines are put away first."""
    raise KeyboardInterrupt
