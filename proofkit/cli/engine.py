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
    from proofkit.cli.progress_bar import progress_bar  # noqa: PLC0415
    from proofkit.engines.jars import engine_lock, ensure_jars, missing_jars  # noqa: PLC0415
    from proofkit.engines.trouble import EngineTrouble  # noqa: PLC0415

    lock = engine_lock()
    if missing_jars(lock):
        print(f"Getting the grammar engine ({_megabytes(lock)}). This happens once.", flush=True)
    try:
        with progress_bar() as bar:
            ensure_jars(lock, bar)
    except EngineTrouble as trouble:
        raise Unusable(str(trouble)) from trouble
    print(_is_there(lock))
    return Exit.CLEAN


@app.command()
@guarded
def status() -> Exit:
    """Tell whether the grammar engine is there, and where."""
    from proofkit.engines.jars import engine_lock, missing_jars  # noqa: PLC0415 - as above

    lock = engine_lock()
    missing = missing_jars(lock)
    if not missing:
        print(_is_there(lock))
    elif len(missing) == len(lock.jars):
        print(
            f"The grammar engine {lock.version} is not on this computer yet ({_megabytes(lock)}). "
            "The next check gets it, or do so now: proofkit engine fetch"
        )
    else:
        print(
            f"The grammar engine {lock.version} is there in part: {len(missing)} of {len(lock.jars)} files are "
            "missing or damaged. The next check gets those, or do so now: proofkit engine fetch"
        )
    return Exit.CLEAN


def _is_there(lock: EngineLock) -> str:
    return (
        f"The grammar engine {lock.version} is there and whole: {_megabytes(lock)} in {lock.folder}"
    )


def _megabytes(lock: EngineLock) -> str:
    return f"{lock.size / 1_000_000:.0f} MB"
