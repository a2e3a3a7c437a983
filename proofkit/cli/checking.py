"""The work of ``proofkit check``: manuscripts to the pipeline, their reports to the author."""

from __future__ import annotations

from collections.abc import Iterable
from contextlib import closing
from dataclasses import dataclass, replace
from pathlib import Path

from proofkit.cli.delivery import Delivery, Files, Pipe, Screen
from proofkit.cli.guard import Exit, say
from proofkit.cli.options import Format
from proofkit.cli.outputs import into_folder, targets
from proofkit.cli.progress_bar import fetch_explained, progress_bar
from proofkit.engines.folders import memory_file
from proofkit.engines.memory import Memory
from proofkit.pipeline import Outcome, check_manuscripts
from proofkit.problem import Unusable
from proofkit.report import Report
from proofkit.reports.phrases import quoted
from proofkit.settings import Choices, own_file_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Request:
    """What was asked for on the command line; None is what was not."""

    manuscripts: tuple[Path, ...]
    choices: Choices
    format: Format | None = None
    output: str | None = None
    limit: int | None = None
    show_stet: bool = False
    new_only: bool = False
    mind_new: bool = False


def check_all(request: Request) -> Exit:
    """Check all manuscripts and hand over their reports; one that can't be read stops no other.

    Raises Unusable, before anything is checked, where the reports could not be handed over.
    """
    manuscripts = tuple(dict.fromkeys(request.manuscripts))
    delivery = _delivery(request, manuscripts)
    outcomes = []
    with (
        closing(Memory(memory_file())) as memory,
        progress_bar(fetch_explained()) as bar,
    ):
        for outcome in check_manuscripts(manuscripts, request.choices, memory=memory, progress=bar):
            bar.clear()
            report = _recorded(outcome)
            outcomes.append(replace(outcome, report=report))
            if report:
                delivery.take(outcome.path, _only_new(report) if request.new_only else report)
            else:
                say(outcome.problem or f"{outcome.path} could not be checked.")
    delivery.close()
    return exit_code(outcomes, mind_new=request.mind_new)


def exit_code(outcomes: Iterable[Outcome], *, mind_new: bool = False) -> Exit:
    """The gravest code of all manuscripts: unusable, not all checked, errors, clean.

    With ``mind_new`` errors that the last draft had already don't count.
    """
    codes = {_code(outcome, mind_new=mind_new) for outcome in outcomes}
    gravest = (Exit.UNUSABLE, Exit.INCOMPLETE, Exit.ERRORS)
    return next((code for code in gravest if code in codes), Exit.CLEAN)


def _code(outcome: Outcome, *, mind_new: bool) -> Exit:
    if outcome.report is None:
        return Exit.UNUSABLE
    if not outcome.report.complete:
        return Exit.INCOMPLETE
    report = _only_new(outcome.report) if mind_new else outcome.report
    return Exit.ERRORS if report.errors else Exit.CLEAN


def _recorded(outcome: Outcome) -> Report | None:
    """The report; in a book's folder the draft is recorded, and the report says what changed."""
    if outcome.report is None or not own_file_of(outcome.path).is_file():
        return outcome.report
    # Only now: elsewhere nothing of the ledger need be loaded.
    from proofkit.cli.recording import recorded  # noqa: PLC0415

    return recorded(outcome)


def _only_new(report: Report) -> Report:
    from proofkit.cli.recording import only_new  # noqa: PLC0415 - as above

    return only_new(report)


def _delivery(request: Request, manuscripts: tuple[Path, ...]) -> Delivery:
    format_ = request.format or _implied(request.output, manuscripts)
    several = len(manuscripts) > 1
    if request.output is not None:
        files = targets(request.output, manuscripts, format_.ending)
        return Files(format_, files, request.limit, show_stet=request.show_stet)
    if format_ is Format.TABLE:
        return Screen(request.limit, several=several, show_stet=request.show_stet)
    if format_ in (Format.WORD, Format.HTML):
        name = f"{manuscripts[0].stem}{format_.ending}"
        raise Unusable(
            f"A {format_.what} needs a file or a folder to go into: --output {quoted(name)}"
        )
    return Pipe(format_, several=several)


def _implied(output: str | None, manuscripts: tuple[Path, ...]) -> Format:
    """The format where none is asked for: a file's ending tells, and in a folder it is JSON."""
    if output is None:
        return Format.TABLE
    if into_folder(output, manuscripts):
        return Format.JSON
    endings = {".json": Format.JSON, ".csv": Format.CSV, ".html": Format.HTML, ".docx": Format.WORD}
    return endings.get(Path(output).suffix.lower(), Format.TABLE)
