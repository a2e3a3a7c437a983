"""``proofkit stet``: let it stand, in this draft and the next."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from proofkit.cli.guard import Exit, guarded

HELP = """Let something stand, in this draft and the next.

A KEY names a row of the table for MANUSCRIPT: its four letters, or more. The name of a check, such as
commas/missing-in-list, lets all stand that this check finds in the book. What you rule is written to
proofkit.toml in the manuscript's folder, where you can read it, change it and take it out again.
"""


@guarded
def stet(
    manuscript: Annotated[Path, typer.Argument(metavar="MANUSCRIPT", hidden=True)],
    keys: Annotated[list[str], typer.Argument(metavar="KEY", hidden=True)],
    because: Annotated[
        str, typer.Option(metavar="TEXT", help="Your reason, to be read again later.")
    ] = "",
) -> Exit:
    """Let something stand. HELP is what the author reads of it."""
    # Only now: help must not wait for the engines' libraries.
    from proofkit.cli.standing import Request, let_stand  # noqa: PLC0415

    return let_stand(
        Request(manuscript=manuscript, keys=tuple(dict.fromkeys(keys)), because=because.strip())
    )
