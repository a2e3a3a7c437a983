"""``proofkit reading``: its options, and its help."""

from __future__ import annotations

from enum import StrEnum
from pathlib import Path
from typing import Annotated

import typer

from proofkit.cli.guard import Exit, guarded

HELP = """Tell how a book reads, and for whom: words on a spread, sentences, grade, hard words.

A MANUSCRIPT is a Word, OpenDocument, RTF, Markdown or text file; several may be named. Nothing is
changed in it, and nothing of it leaves this computer.

The figures stand beside what is usual for the age band. None is a rule, and no formula hears a story.
"""


class ReadingFormat(StrEnum):
    """How it is written."""

    TABLE = "table"
    JSON = "json"
    CSV = "csv"
    HTML = "html"

    @property
    def ending(self) -> str:
        """How the file of such a report ends, in a folder that may hold others on the same book."""
        return ".reading.report.txt" if self is ReadingFormat.TABLE else f".reading.{self}"


@guarded
def reading(
    manuscripts: Annotated[list[Path], typer.Argument(metavar="MANUSCRIPT", hidden=True)],
    age_band: Annotated[
        str | None,
        typer.Option(
            metavar="NAME",
            help="Whom the book is for: board, picture (as without this option), early-reader, chapter "
            "or middle-grade.",
        ),
    ] = None,
    format_: Annotated[
        ReadingFormat | None,
        typer.Option(
            "--format",
            help="A table to read (as without this option), a page for the browser (html), or data for programs.",
        ),
    ] = None,
    output: Annotated[
        str | None,
        typer.Option(
            metavar="PATH",
            help="Write to this file; for several manuscripts, to files in this folder.",
        ),
    ] = None,
) -> Exit:
    """Measure manuscripts, and hand over the reports. HELP is what the author reads of it."""
    # Only now: help must not wait for the word lists.
    from proofkit.cli.measuring import Request, read_all  # noqa: PLC0415

    return read_all(
        Request(manuscripts=tuple(manuscripts), age_band=age_band, format=format_, output=output)
    )
