"""``proofkit engine``: get the grammar engine ahead of time, and see what is there."""

from __future__ import annotations

from typing import TYPE_CHECKING

import typer

from proofkit.cli.guard import Exit, guarded

if TYPE_CHECKING:
    from proofkit.engines.analyse import EngineStatus

app = typer.Typer(
    help="The grammar engine: get it ahead of time, and see what is there.",
    no_args_is_help=True,
    rich_markup_mode=None,
)


@app.command("fetch")
@guarded
def fetch_engine() -> Exit:
    """Get the grammar engine now, so that no check has to wait for it."""
    # Only now: help must not wait for the engines.
    from proofkit.cli.progress_bar import fetch_explained, progress_bar  # noqa: PLC0415
    from proofkit.engines.analyse import fetch, status  # noqa: PLC0415

    with progress_bar(fetch_explained()) as bar:
        fetch(bar)
    print(told(status()))
    return Exit.CLEAN


@app.command("status")
@guarded
def engine_status() -> Exit:
    """Tell whether the grammar engine is there, and where."""
    from proofkit.engines.analyse import status  # noqa: PLC0415 - as above

    print(told(status()))
    return Exit.CLEAN


def told(engine: EngineStatus) -> str:
    """What is there, and what to do if it isn't."""
    size = f"{engine.size / 1_000_000:.0f} MB"
    if engine.there:
        return (
            f"The grammar engine {engine.version} is there and whole: {size} in {engine.folder}\n"
            f"It runs on Java {engine.java}."
        )
    return (
        f"The grammar engine {engine.version} ({size}) is not here, or not whole. "
        "The next check gets it; to get it now: proofkit engine fetch"
    )
