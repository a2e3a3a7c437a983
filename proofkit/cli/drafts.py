"""``proofkit drafts``: its options, its commands, and their help."""

from __future__ import annotations

from enum import StrEnum
from pathlib import Path
from typing import Annotated

import typer
from typer.core import TyperGroup

from proofkit.cli.guard import Exit, guarded

_LIST = "list"
HELP = """List a book's drafts: what each had, what was fixed, what was new.

A book's folder is one with proofkit.toml in it (proofkit begin FOLDER). Every proofkit check of a
manuscript in that folder is a draft of the book, whatever the file is called. They are kept in
proofkit.db, in that folder and nowhere else.

\b
    proofkit drafts [MANUSCRIPT|FOLDER]  a row a draft; of this folder without it
        --format table|html|json|csv     how; a table without this option
        --output PATH                    write to this file; its ending tells how
    proofkit drafts compare A B          what is different between two drafts
    proofkit drafts export FILE          all of it as one JSON file
    proofkit drafts import FILE          what was exported, or another proofkit.db
"""


class DraftsFormat(StrEnum):
    """How the drafts are written."""

    TABLE = "table"
    JSON = "json"
    CSV = "csv"
    HTML = "html"


class _Drafts(TyperGroup):
    """Its commands, and where none is named the list of drafts."""

    # Every context here is Typer's own; the library's types don't say so.
    def parse_args(self, ctx: typer.Context, args: list[str]) -> list[str]:  # type: ignore[override]
        asks_help = bool(args) and args[0] in ctx.help_option_names
        if not asks_help and not (args and args[0] in self.commands):
            args = [_LIST, *args]
        return super().parse_args(ctx, args)


app = typer.Typer(help=HELP, cls=_Drafts, rich_markup_mode=None)
_Book = Annotated[
    Path,
    typer.Option("--book", metavar="FOLDER", help="The book's folder; without it, this one."),
]


@app.command(_LIST, hidden=True)
@guarded
def list_(
    where: Annotated[Path, typer.Argument(metavar="MANUSCRIPT|FOLDER")] = Path(),
    format_: Annotated[
        DraftsFormat | None,
        typer.Option(
            "--format",
            help="A table to read (as without this option), a page for the browser (html), or data for programs.",
        ),
    ] = None,
    output: Annotated[
        Path | None,
        typer.Option(
            metavar="PATH", help="Write to this file; .html, .json and .csv tell the format."
        ),
    ] = None,
) -> Exit:
    """List a book's drafts."""
    from proofkit.cli.drafting import hand_over  # noqa: PLC0415 - help must not wait

    return hand_over(where, format_, output)


@app.command("compare")
@guarded
def compare(
    a: Annotated[
        str, typer.Argument(metavar="A", help="A draft: its number, its date or its file.")
    ],
    b: Annotated[str, typer.Argument(metavar="B", help="Another one.")],
    book: _Book = Path(),
) -> Exit:
    """Tell what changed between two drafts, word by word."""
    from proofkit.cli.drafting import compare_drafts  # noqa: PLC0415 - as above

    return compare_drafts(a, b, book)


@app.command("export")
@guarded
def export(
    file: Annotated[Path, typer.Argument(metavar="FILE", help="The JSON file to write.")],
    book: _Book = Path(),
) -> Exit:
    """Write all drafts as one JSON file."""
    from proofkit.cli.drafting import export_to  # noqa: PLC0415 - as above

    return export_to(file, book)


@app.command("import")
@guarded
def import_(
    file: Annotated[
        Path, typer.Argument(metavar="FILE", help="What was exported, or another proofkit.db.")
    ],
    book: _Book = Path(),
) -> Exit:
    """Bring drafts in, each once, in the order of their dates."""
    from proofkit.cli.drafting import import_from  # noqa: PLC0415 - as above

    return import_from(file, book)
