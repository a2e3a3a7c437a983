"""``proofkit engine``: get the grammar engine ahead of time, and see what is there."""

from __future__ import annotations

from typing import TYPE_CHECKING

import typer

from proofkit.cli.guard import Exit, guarded
from proofkit.problem import Unusable

if TYPE_CHECKING:
    from proofkit.engines.jars import EngineLock

app = typer.Typer(
    help="The grammar engine: get it ahead of time, and see what is there.",
    no_args_is_help=True,
    rich_markup_mode=None,
)


@app.command()
@guarded
def fetch() -> Exit:
    """Get the grammar engine now, so that no check has to wait for it."""
    # Only now: help must not wait for the engines.
    from proofkit.cli.progress_bar import fetch_explained, progress_bar  # noqa: PLC0415
    from proofkit.engines.jars import engine_lock, ensure_jars  # noqa: PLC0415
    from proofkit.engines.trouble import EngineTrouble  # noqa: PLC0415

    try:
        with progress_bar(fetch_explained()) as bar:
            ensure_jars(engine_lock(), bar)
    except EngineTrouble as trouble:
        raise Unusable(str(trouble)) from trouble
    print(_told(engine_lock()))
    return Exit.CLEAN


@app.command()
@guarded
def status() -> Exit:
    """Tell whether the grammar engine is there, and where."""
    from proofkit.engines.jars import engine_lock  # noqa: PLC0415 - as above

    print(_told(engine_lock()))
    return Exit.CLEAN


def _told(lock: EngineLock) -> str:
    """What is there, and what to do if it isn't."""
    from proofkit.engines.jars import missing_jars  # noqa: PLC0415 - as above

    name, size = f"The grammar engine {lock.version}", f"{lock.size / 1_000_000:.0f} MB"
    missing = missing_jars(lock)
    if not missing:
        return f"{name} is there and whole: {size} in {lock.folder}"
    state = (
        f"is not on this computer yet ({size})"
        if len(missing) == len(lock.jars)
        else f"is there in part: {len(missing)} of its {len(lock.jars)} files are missing or damaged"
    )
    return f"{name} {state}. The next check gets it; to get it now: proofkit engine fetch"
