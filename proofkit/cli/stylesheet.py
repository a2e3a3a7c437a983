"""``proofkit stylesheet``: its options, and its help."""

from __future__ import annotations

from enum import StrEnum
from pathlib import Path
from typing import Annotated

import typer

from proofkit.cli.guard import Exit, guarded

HELP = """Write the style sheet of a manuscript: what the book decided, or mostly does.

Names with where they come first, words with their hyphens and capitals, numbers, punctuation,
sounds, invented words, and what is still to be decided. It goes to the proofreader with the
manuscript. MANUSCRIPT is a Word, OpenDocument, RTF, Markdown or text file. Nothing is changed in
it, and nothing of it leaves this computer.

What was decided stands in proofkit.toml beside the manuscript, and comes before what the book does.
"""


class SheetFormat(StrEnum):
    """How a style sheet is written."""

    TABLE = "table"
    MARKDOWN = "md"
    WORD = "word"
    JSON = "json"


@guarded
def stylesheet(
    manuscript: Annotated[Path, typer.Argument(metavar="MANUSCRIPT", hidden=True)],
    format_: Annotated[
        SheetFormat | None,
        typer.Option(
            "--format",
            help="A table to read (as without this option), Markdown, a Word file, or data for programs.",
        ),
    ] = None,
    output: Annotated[
        str | None,
        typer.Option(
            metavar="PATH",
            help="Write to this file, or into this folder; .md, .docx and .json tell the format.",
        ),
    ] = None,
) -> Exit:
    """Make the style sheet, and hand it over. HELP is what the author reads of it."""
    # Only now: help must not wait for the engines' libraries.
    from proofkit.cli.sheeting import hand_over  # noqa: PLC0415

    return hand_over(manuscript, format_, output)
