"""``proofkit rulings-from``: what the author answered in the Word copy becomes rulings."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from proofkit.cli.guard import Exit, guarded

HELP = """Read a Word copy back after you worked in it.

COPY is a Word copy that proofkit check made (--format word). A comment that you resolved, or answered
with “stet”, lets its words stand, in this draft and the next; what you write after “stet”, or in any
answer to a comment that you resolved, is kept as your reason. Words that you changed count as mended.
The rulings are written to proofkit.toml in the copy's folder, so keep the copy in the book's folder.
"""


@guarded
def rulings_from(
    copy: Annotated[Path, typer.Argument(metavar="COPY", hidden=True)],
) -> Exit:
    """Read a Word copy back. HELP is what the author reads of it."""
    # Only now: help must not wait for the engines' libraries.
    from proofkit.cli.answering import take_in  # noqa: PLC0415

    return take_in(copy)
