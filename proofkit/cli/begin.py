"""``proofkit begin``: the book's own settings."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from proofkit.cli.guard import Exit, guarded
from proofkit.cli.options import EnglishAsked

HELP = """Write a book's own settings, proofkit.toml, into its folder.

All manuscripts in FOLDER are taken for drafts of that book. What you don't say is asked for, in a
window; elsewhere the usual is taken. Settings that are there already are never written over.
"""


@guarded
def begin(
    folder: Annotated[Path, typer.Argument(metavar="FOLDER", hidden=True)],
    title: Annotated[str | None, typer.Option(metavar="T", help="What the book is called.")] = None,
    age_band: Annotated[
        str | None,
        typer.Option(
            metavar="NAME",
            help="Whom it is for: board, picture (the usual), early-reader, chapter or middle-grade.",
        ),
    ] = None,
    english: Annotated[
        EnglishAsked | None,
        typer.Option(help="auto (the usual) finds out from each manuscript."),
    ] = None,
) -> Exit:
    """Write a book's own settings. HELP is what the author reads of it."""
    from proofkit.cli.beginning import Request, begin_book  # noqa: PLC0415 - help must not wait

    return begin_book(
        Request(
            folder=folder,
            title=title,
            age_band=age_band,
            english=str(english) if english else None,
        )
    )
