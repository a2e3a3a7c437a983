"""``proofkit handoff``: its options, and its help."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from proofkit.cli.guard import Exit, guarded

HELP = """Make the pack that a human proofreader is given.

A folder, and a .zip of it beside: a brief, the clean manuscript as a Word file, a copy with the open
queries as comments, the style sheet, what you let stand and why, the words to confirm, the words per
spread, and a checklist. Nothing is changed in the manuscript, and nothing of it leaves this computer.

Errors that are left should be mended first: with any, proofkit asks before it makes the pack.
"""


@guarded
def handoff(
    manuscript: Annotated[Path, typer.Argument(metavar="MANUSCRIPT", hidden=True)],
    output: Annotated[
        Path,
        typer.Option(metavar="FOLDER", help="The folder to make; it must be new, or empty."),
    ],
    *,
    anyway: Annotated[
        bool,
        typer.Option("--anyway", help="Make the pack without asking, though errors are left."),
    ] = False,
) -> Exit:
    """Make the pack, and put it where it was asked for. HELP is what the author reads of it."""
    # Only now: help must not wait for the engines' libraries.
    from proofkit.cli.handing_off import hand_off  # noqa: PLC0415

    return hand_off(manuscript, output, anyway=anyway)
