"""How reports reach the author: on the screen, into a pipe, into files."""

from __future__ import annotations

import io
import sys
from collections.abc import Mapping
from datetime import UTC, datetime
from pathlib import Path
from typing import Protocol

from proofkit.cli.options import Format
from proofkit.report import Report
from proofkit.reports.csv_report import as_csv
from proofkit.reports.json_report import as_json, as_json_array
from proofkit.reports.phrases import tally
from proofkit.reports.plain import as_plain
from proofkit.reports.shown import ROWS
from proofkit.reports.writing import write_report

_FILE_WIDTH = 100  # characters to a line of a table in a file
_BYTE_ORDER_MARK = "\ufeff"  # without it a spreadsheet takes UTF-8 for an old code page


class Delivery(Protocol):
    """Takes each report as it is ready, and is closed when there are no more."""

    def take(self, path: Path, report: Report) -> None: ...

    def close(self) -> None: ...


class Screen:
    """Tables on standard output, one after another: set out for a terminal, plain for a pipe."""

    def __init__(self, limit: int | None, *, several: bool, show_stet: bool = False) -> None:
        self._limit = limit
        self._several = several
        self._show_stet = show_stet

    def take(self, path: Path, report: Report) -> None:
        if self._several:
            print(f"\n== {path} ==\n")
        if sys.stdout.isatty():
            _show(report, ROWS if self._limit is None else self._limit, show_stet=self._show_stet)
        else:
            plain = as_plain(report, limit=self._limit or 0, show_stet=self._show_stet)
            print(plain, end="", flush=True)

    def close(self) -> None:
        """Everything is out already."""


class Pipe:
    """All reports as one piece of data on standard output: JSON or CSV, in UTF-8."""

    def __init__(self, format_: Format, *, several: bool) -> None:
        self._format = format_
        self._several = several
        self._reports: list[Report] = []

    def take(self, path: Path, report: Report) -> None:  # noqa: ARG002 - the report has its path
        self._reports.append(report)

    def close(self) -> None:
        sys.stdout.flush()
        sys.stdout.buffer.write(self._content())
        sys.stdout.buffer.flush()

    def _content(self) -> bytes:
        if self._format is Format.CSV:
            return as_csv(self._reports).encode()
        if self._several:
            return as_json_array(self._reports)
        return as_json(self._reports[0]) if self._reports else b""


class Files:
    """Each report in a file of its own, and a line on standard output that says where."""

    def __init__(
        self,
        format_: Format,
        targets: Mapping[Path, Path],
        limit: int | None,
        *,
        show_stet: bool = False,
    ) -> None:
        self._format = format_
        self._targets = targets
        self._limit = limit or 0
        self._show_stet = show_stet

    def take(self, path: Path, report: Report) -> None:
        target = self._targets[path]
        write_report(target, self._content(path, report), self._format.what)
        print(f"{path.name}: {tally(report)}. The {self._format.what} is in {target}", flush=True)

    def close(self) -> None:
        """Everything is written already."""

    def _content(self, path: Path, report: Report) -> bytes:
        if self._format is Format.JSON:
            return as_json(report)
        if self._format is Format.WORD:
            # Loaded here: no other report waits for it.
            from proofkit.reports.word_copy.copy import as_word_copy  # noqa: PLC0415

            return as_word_copy(report, path, datetime.now(UTC))
        if self._format is Format.HTML:
            from proofkit.reports.proof.proof import as_proof  # noqa: PLC0415 - as above

            return as_proof(report, show_stet=self._show_stet).encode()
        if self._format is Format.CSV:
            return (_BYTE_ORDER_MARK + as_csv([report])).encode()
        return _set_out(report, self._limit, show_stet=self._show_stet).encode()


def _show(report: Report, limit: int, *, show_stet: bool) -> None:
    # Loaded here: data for programs doesn't wait for it.
    from proofkit.cli.screen import console_on  # noqa: PLC0415
    from proofkit.reports.terminal.show import show  # noqa: PLC0415

    show(report, console_on(sys.stdout), limit=limit, show_stet=show_stet)


def _set_out(report: Report, limit: int, *, show_stet: bool) -> str:
    """The report as on a terminal, in black alone."""
    from proofkit.cli.screen import sheet  # noqa: PLC0415 - as above
    from proofkit.reports.terminal.show import show  # noqa: PLC0415 - as above

    text = io.StringIO()
    show(report, sheet(text, _FILE_WIDTH), limit=limit, show_stet=show_stet)
    return "".join(f"{line.rstrip()}\n" for line in text.getvalue().splitlines())
