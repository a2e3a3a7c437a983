"""The work of ``proofkit handoff``: a manuscript checked, its errors told, its pack put in its place."""

from __future__ import annotations

import sys
from contextlib import closing
from datetime import UTC, date, datetime
from pathlib import Path

from proofkit.cli.guard import Exit, say
from proofkit.cli.progress_bar import fetch_explained, progress_bar
from proofkit.engines.folders import memory_file
from proofkit.engines.memory import Memory
from proofkit.handoff import pack_of, zipped
from proofkit.pipeline import check_manuscripts
from proofkit.problem import Unusable
from proofkit.report import Report
from proofkit.reports.handoff.folder import check_folder, put_pack, zip_of
from proofkit.reports.phrases import counted, quoted, tally
from proofkit.settings import Choices
from proofkit.sheets import style_sheet

_NOT_MADE = "No pack was made."


def hand_off(manuscript: Path, output: Path, *, anyway: bool) -> Exit:
    """Make the pack of one manuscript.

    Raises Unusable, before the work is done, where the pack could not be put at ``output``.
    """
    folder = output.resolve()
    check_folder(folder, manuscript)
    with closing(Memory(memory_file())) as memory, progress_bar(fetch_explained()) as bar:
        [outcome] = check_manuscripts([manuscript], Choices(), memory=memory, progress=bar)
        bar.clear()
        if outcome.report is None:
            raise Unusable(outcome.problem or f"{manuscript} could not be checked.")
        if outcome.report.errors and not anyway and not _wanted(outcome.report):
            return Exit.ERRORS
        sheet = style_sheet(manuscript, memory=memory, made=date.today(), progress=bar)
    made = datetime.now(UTC)
    files = pack_of(outcome, sheet, made)
    put_pack(folder, files, zipped(files, folder.name, made))
    print(
        f"{manuscript.name}: {tally(outcome.report)}. The pack is in {output}, and in "
        f"{zip_of(folder).name} beside it",
        flush=True,
    )
    notices = (*outcome.report.notices, *sheet.notices)
    unchecked = dict.fromkeys(notice.text for notice in notices if notice.unchecked)
    for text in unchecked:
        say(f"Note: {text}")
    return Exit.INCOMPLETE if unchecked else Exit.CLEAN


def _wanted(report: Report) -> bool:
    """Whether the author wants the pack though errors are left; where nobody can be asked, no."""
    sees = f"proofkit still sees {counted(len(report.errors), 'error')} in the manuscript."
    if not (sys.stdin.isatty() and sys.stdout.isatty()):
        say(
            f"{sees} {_NOT_MADE} Mend what is wrong (proofkit check {quoted(report.manuscript.path)} "
            "lists it), or add --anyway."
        )
        return False
    print(sees)
    try:
        answer = input("Make the pack all the same? (yes or no; Enter: no) ").strip().lower()
    except EOFError:
        print()
        answer = ""
    if answer in ("y", "yes"):
        return True
    say(f"{_NOT_MADE} To see what is wrong: proofkit check {quoted(report.manuscript.path)}")
    return False
