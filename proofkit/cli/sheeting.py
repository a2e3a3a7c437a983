"""The work of ``proofkit stylesheet``: a manuscript to the pipeline, its style sheet to the author."""

from __future__ import annotations

import io
import sys
from contextlib import closing
from datetime import date
from pathlib import Path

from proofkit.cli.guard import Exit
from proofkit.cli.outputs import into_folder
from proofkit.cli.progress_bar import progress_bar
from proofkit.cli.stylesheet import SheetFormat
from proofkit.engines.folders import memory_file
from proofkit.engines.memory import Memory
from proofkit.problem import Unusable
from proofkit.reports.phrases import counted
from proofkit.reports.stylesheet.json_sheet import as_json
from proofkit.reports.stylesheet.markdown import as_markdown
from proofkit.reports.stylesheet.plain import as_plain
from proofkit.reports.writing import check_target, make_folder, write_report
from proofkit.sheets import style_sheet
from proofkit.stylesheet.sheet import Part, StyleSheet

_WHAT = "style sheet"
_FILE_WIDTH = 100  # characters to a line of a table in a file
_ENDINGS = {
    SheetFormat.TABLE: ".txt",
    SheetFormat.MARKDOWN: ".md",
    SheetFormat.WORD: ".docx",
    SheetFormat.JSON: ".json",
}


def hand_over(manuscript: Path, format_: SheetFormat | None, output: str | None) -> Exit:
    """Make the style sheet of one manuscript, and print it or write it.

    Raises Unusable, before the work is done, where the sheet could not be handed over.
    """
    format_ = format_ or _implied(output, manuscript)
    target = None if output is None else _target(output, manuscript, format_)
    if target is None and format_ is SheetFormat.WORD and sys.stdout.isatty():
        raise Unusable(
            f"A Word file can’t be shown here. Give it a name: --output {manuscript.stem}.stylesheet.docx"
        )
    with closing(Memory(memory_file())) as memory, progress_bar() as bar:
        sheet = style_sheet(manuscript, memory=memory, made=date.today(), progress=bar)
    if target is None:
        _show(sheet, format_)
    else:
        write_report(target, _content(sheet, format_), _WHAT)
        print(f"{manuscript.name}: {_summary(sheet)}. The style sheet is in {target}", flush=True)
    complete = not any(notice.unchecked for notice in sheet.notices)
    return Exit.CLEAN if complete else Exit.INCOMPLETE


def _implied(output: str | None, manuscript: Path) -> SheetFormat:
    """The format where none is asked for: a file's ending tells, and in a folder it is a Word file."""
    if output is None:
        return SheetFormat.TABLE
    if into_folder(output, [manuscript]):
        return SheetFormat.WORD
    endings = {ending: format_ for format_, ending in _ENDINGS.items()}
    return endings.get(Path(output).suffix.lower(), SheetFormat.TABLE)


def _target(output: str, manuscript: Path, format_: SheetFormat) -> Path:
    target = Path(output)
    if into_folder(output, [manuscript]):
        make_folder(target)
        target /= f"{manuscript.stem}.stylesheet{_ENDINGS[format_]}"
    # A style sheet that is there may have an author's own notes in it: it is never written over.
    check_target(target, [manuscript], _WHAT)
    return target


def _show(sheet: StyleSheet, format_: SheetFormat) -> None:
    """A table set out for a terminal, plain for a pipe; everything else in UTF-8 into a pipe."""
    if format_ is SheetFormat.TABLE and not sys.stdout.isatty():
        print(as_plain(sheet), end="", flush=True)
    elif format_ is SheetFormat.TABLE:
        # Loaded here: data for programs doesn't wait for it.
        from proofkit.cli.screen import console_on  # noqa: PLC0415
        from proofkit.reports.terminal.style_sheet import show_style_sheet  # noqa: PLC0415

        show_style_sheet(sheet, console_on(sys.stdout))
    elif sys.stdout.isatty():
        print(_content(sheet, format_).decode(), end="", flush=True)
    else:
        sys.stdout.flush()
        sys.stdout.buffer.write(_content(sheet, format_))
        sys.stdout.buffer.flush()


def _content(sheet: StyleSheet, format_: SheetFormat) -> bytes:
    if format_ is SheetFormat.JSON:
        return as_json(sheet)
    if format_ is SheetFormat.MARKDOWN:
        return as_markdown(sheet).encode(errors="replace")
    if format_ is SheetFormat.WORD:
        from proofkit.reports.stylesheet.word import as_word  # noqa: PLC0415 - as above

        return as_word(sheet)
    return _set_out(sheet).encode(errors="replace")


def _set_out(sheet: StyleSheet) -> str:
    """The sheet as on a terminal, in black alone."""
    from proofkit.cli.screen import sheet as paper  # noqa: PLC0415 - as above
    from proofkit.reports.terminal.style_sheet import show_style_sheet  # noqa: PLC0415 - as above

    text = io.StringIO()
    show_style_sheet(sheet, paper(text, _FILE_WIDTH))
    return "".join(f"{line.rstrip()}\n" for line in text.getvalue().splitlines())


def _summary(sheet: StyleSheet) -> str:
    """How much the sheet holds: "31 rows, 2 open questions"."""
    questions = sheet.section(Part.QUESTIONS)
    rows = sum(len(section.rows) for section in sheet.sections if section is not questions)
    asked = len(questions.rows) if questions else 0
    return f"{counted(rows, 'row')}, {counted(asked, 'open question') if asked else 'no open questions'}"
