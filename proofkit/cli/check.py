"""``proofkit check``: its options, and its help."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from proofkit.cli.guard import Exit, guarded
from proofkit.cli.options import EnglishAsked, Format


def _not_negative(limit: int | None) -> int | None:
    if limit is not None and limit < 0:
        raise typer.BadParameter("give a number of rows, or 0 for all of them.")
    return limit


HELP = """Check manuscripts, and list what is worth mending first.

A MANUSCRIPT is a Word, OpenDocument, RTF, Markdown or text file; several may be named. Nothing is
changed in it, and nothing of it leaves this computer. In a book's folder (proofkit begin) each text
that is checked is recorded as a draft, and the report says what changed since the last one.

\b
The exit code says how it went:
    0  no errors (there may be queries to think about)
    1  errors to mend
    2  a manuscript, an option or a place to write to can't be used
    3  finished, but something was not checked; the report says what
  130  stopped, with Ctrl-C or from outside
"""


@guarded
def check(  # noqa: PLR0913 - every option is an argument
    manuscripts: Annotated[list[Path], typer.Argument(metavar="MANUSCRIPT", hidden=True)],
    format_: Annotated[
        Format | None,
        typer.Option(
            "--format",
            help="A table to read (as without this option); html, the marked proof, for the browser; word, "
            "a copy of the manuscript with a comment at each row's words; data for programs.",
        ),
    ] = None,
    output: Annotated[
        str | None,
        typer.Option(
            metavar="PATH",
            help="Write to this file; for several manuscripts, to files in this folder.",
        ),
    ] = None,
    english: Annotated[
        EnglishAsked | None,
        typer.Option(help="auto finds out from the book, as without this option."),
    ] = None,
    age_band: Annotated[
        str | None,
        typer.Option(
            metavar="NAME",
            help="Whom the book is for: board, picture (as without this option), early-reader, chapter "
            "or middle-grade.",
        ),
    ] = None,
    grammar_server: Annotated[
        str | None,
        typer.Option(metavar="URL", help="Ask a grammar engine that already runs at this address."),
    ] = None,
    limit: Annotated[
        int | None,
        typer.Option(
            metavar="N",
            callback=_not_negative,
            help="Show at most N rows of the table: 25 in a window; 0 for all.",
        ),
    ] = None,
    *,
    show_stet: Annotated[
        bool,
        typer.Option(
            "--show-stet", help="Show the rows that you let stand, too, after the others."
        ),
    ] = False,
    new_only: Annotated[
        bool,
        typer.Option(
            "--new-only",
            help="In a book’s folder: list only what the last draft did not have.",
        ),
    ] = False,
    mind_new: Annotated[
        bool,
        typer.Option(
            "--mind-new",
            help="Let the exit code be 1 only for errors that the last draft did not have.",
        ),
    ] = False,
) -> Exit:
    """Check manuscripts, and hand over the reports. HELP is what the author reads of it."""
    # Only now: help must not wait for the engines' libraries.
    from proofkit.cli.checking import Request, check_all  # noqa: PLC0415
    from proofkit.settings import Choices, English  # noqa: PLC0415

    chosen = None if english in (None, EnglishAsked.AUTO) else English(str(english))
    return check_all(
        Request(
            manuscripts=tuple(manuscripts),
            choices=Choices(
                english=chosen,
                age_band=age_band,
                grammar_server=grammar_server,
            ),
            format=format_,
            output=output,
            limit=limit,
            show_stet=show_stet,
            new_only=new_only,
            mind_new=mind_new,
        )
    )
