"""The work of ``proofkit reading``: manuscripts to the pipeline, their reports to the author."""

from __future__ import annotations

import io
import sys
from collections.abc import Mapping, Sequence
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path

from proofkit.cli.guard import Exit, say
from proofkit.cli.outputs import into_folder, targets
from proofkit.cli.progress_bar import progress_bar
from proofkit.cli.reading import ReadingFormat
from proofkit.engines.folders import memory_file
from proofkit.engines.memory import Memory
from proofkit.problem import Unusable
from proofkit.reading_report import ReadingReport
from proofkit.readings import readings
from proofkit.reports.reading.csv_reading import as_csv
from proofkit.reports.reading.json_reading import as_json, as_json_array
from proofkit.reports.reading.plain import as_plain
from proofkit.reports.reading.setting import about
from proofkit.reports.writing import write_report
from proofkit.settings import Choices

_FILE_WIDTH = 100  # characters to a line of a table in a file
_BYTE_ORDER_MARK = "\ufeff"  # without it a spreadsheet takes UTF-8 for an old code page


@dataclass(frozen=True, slots=True, kw_only=True)
class Request:
    """What was asked for on the command line; None is what was not."""

    manuscripts: tuple[Path, ...]
    age_band: str | None = None
    format: ReadingFormat | None = None
    output: str | None = None


def read_all(request: Request) -> Exit:
    """Measure all manuscripts and hand over their reports; one that can't be read stops no other.

    Raises Unusable, before anything is measured, where the reports could not be handed over.
    """
    manuscripts = tuple(dict.fromkeys(request.manuscripts))
    format_ = request.format or _implied(request.output, manuscripts)
    if format_ is ReadingFormat.HTML and request.output is None and len(manuscripts) > 1:
        raise Unusable("Several pages can’t be one file. Name a folder for them: --output FOLDER/")
    files = targets(request.output, manuscripts, format_.ending) if request.output else {}
    reports: list[ReadingReport] = []
    code = Exit.CLEAN
    asked = Choices(age_band=request.age_band)
    with closing(Memory(memory_file())) as memory, progress_bar() as bar:
        for outcome in readings(manuscripts, asked, memory=memory, progress=bar):
            bar.clear()
            if outcome.report is None:
                say(outcome.problem or f"{outcome.path} could not be measured.")
                code = Exit.UNUSABLE
                continue
            if not outcome.complete and code is Exit.CLEAN:
                code = Exit.INCOMPLETE
            reports.append(outcome.report)
            if files:
                _write(outcome.path, outcome.report, format_, files)
            elif format_ is ReadingFormat.TABLE:
                _show(outcome.path, outcome.report, several=len(manuscripts) > 1)
    if not files and format_ is not ReadingFormat.TABLE and reports:
        _pipe(reports, format_, several=len(manuscripts) > 1)
    return code


def _implied(output: str | None, manuscripts: Sequence[Path]) -> ReadingFormat:
    """The format where none is asked for: a file's ending tells, and in a folder it is JSON."""
    if output is None:
        return ReadingFormat.TABLE
    if into_folder(output, manuscripts):
        return ReadingFormat.JSON
    endings = {f".{each}": each for each in ReadingFormat if each is not ReadingFormat.TABLE}
    return endings.get(Path(output).suffix.lower(), ReadingFormat.TABLE)


def _show(path: Path, report: ReadingReport, *, several: bool) -> None:
    """A table set out for a terminal, plain for a pipe."""
    if several:
        print(f"\n== {path} ==\n")
    if not sys.stdout.isatty():
        print(as_plain(report), end="", flush=True)
        return
    # Loaded here: data for programs doesn't wait for it.
    from proofkit.cli.screen import console_on  # noqa: PLC0415
    from proofkit.reports.terminal.reading_table import show_reading  # noqa: PLC0415

    show_reading(report, console_on(sys.stdout))


def _pipe(reports: Sequence[ReadingReport], format_: ReadingFormat, *, several: bool) -> None:
    sys.stdout.flush()
    if format_ is ReadingFormat.CSV:
        content = as_csv(reports).encode()
    elif format_ is ReadingFormat.HTML:
        content = _content(reports[0], format_)
    else:
        content = as_json_array(reports) if several else as_json(reports[0])
    sys.stdout.buffer.write(content)
    sys.stdout.buffer.flush()


def _write(
    path: Path, report: ReadingReport, format_: ReadingFormat, files: Mapping[Path, Path]
) -> None:
    write_report(files[path], _content(report, format_))
    print(f"{path.name}: {about(report)}. The report is in {files[path]}", flush=True)


def _content(report: ReadingReport, format_: ReadingFormat) -> bytes:
    if format_ is ReadingFormat.JSON:
        return as_json(report)
    if format_ is ReadingFormat.HTML:
        from proofkit.reports.reading.page import as_html  # noqa: PLC0415 - as above

        return as_html(report).encode()
    if format_ is ReadingFormat.CSV:
        return (_BYTE_ORDER_MARK + as_csv([report])).encode()
    return _set_out(report).encode()


def _set_out(report: ReadingReport) -> str:
    """The report as on a terminal, in black alone."""
    from proofkit.cli.screen import sheet  # noqa: PLC0415 - as above
    from proofkit.reports.terminal.reading_table import show_reading  # noqa: PLC0415 - as above

    text = io.StringIO()
    show_reading(report, sheet(text, _FILE_WIDTH))
    return "".join(f"{line.rstrip()}\n" for line in text.getvalue().splitlines())
