"""The work of ``proofkit stet``: from the letters of a key to a ruling in the book's own file."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path

from proofkit.book import Book
from proofkit.checks.registry import check_named, check_names
from proofkit.cli.explain import unknown_check
from proofkit.cli.guard import Exit
from proofkit.cli.progress_bar import fetch_explained, progress_bar
from proofkit.engines.folders import memory_file
from proofkit.engines.memory import Memory
from proofkit.issue import Issue
from proofkit.pipeline import Outcome, check_manuscripts
from proofkit.problem import Unusable
from proofkit.report import RankedIssue, Report
from proofkit.reports.excerpt import excerpt
from proofkit.reports.keys import SHORTEST, all_issues
from proofkit.reports.phrases import counted, quoted
from proofkit.reports.places import place
from proofkit.rulings.entry import Entry, entry_for
from proofkit.rulings.judging import equals
from proofkit.rulings.keeping import add
from proofkit.settings import Choices, own_file_of

_WIDTH = 60  # characters of a line that are said back


@dataclass(frozen=True, slots=True, kw_only=True)
class Request:
    """What was asked for on the command line."""

    manuscript: Path
    keys: tuple[str, ...]
    because: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Draft:
    """A manuscript as checked: all that a key can name."""

    report: Report
    book: Book
    issues: tuple[Issue, ...]


def let_stand(request: Request) -> Exit:
    """Let all that the keys name stand. Raises Unusable, with nothing written, if one names nothing."""
    draft = _checked(request.manuscript)
    wanted = [_wanted(draft, request, key) for key in request.keys]
    standing = {each.issue.key for each in draft.report.let_stand}
    new = [entry for entry, _ in wanted if entry.key not in standing]
    file = own_file_of(request.manuscript)
    added = add(file, new) if new else ()
    for entry, said in wanted:
        print(f"{'Let stand' if entry in added else 'Stands already'}: {said}")
    if added:
        print(
            f"Written to {file}. To see what stands: "
            f"proofkit check {quoted(str(request.manuscript))} --show-stet"
        )
    return Exit.CLEAN


def _checked(manuscript: Path) -> _Draft:
    with closing(Memory(memory_file())) as memory, progress_bar(fetch_explained()) as bar:
        (outcome,) = check_manuscripts([manuscript], Choices(), memory=memory, progress=bar)
    return _draft(outcome)


def _draft(outcome: Outcome) -> _Draft:
    if outcome.report is None or outcome.book is None:
        raise Unusable(outcome.problem or f"{outcome.path} could not be checked.")
    return _Draft(report=outcome.report, book=outcome.book, issues=outcome.issues)


def _wanted(draft: _Draft, request: Request, key: str) -> tuple[Entry, str]:
    """The entry for a key or a check, and what to say of it."""
    today = datetime.datetime.now().astimezone().date()
    asked = key.strip().lower()
    if "/" in asked:
        return _whole_check(draft, asked, Entry(date=today, check=asked, because=request.because))
    row = _row(draft.report, asked, request.manuscript)
    issue = next(issue for issue in draft.issues if issue.key == row.key)
    where = place(draft.report, row.page, row.start)
    entry = entry_for(
        draft.book,
        issue,
        equals=equals(draft.book, draft.issues, issue),
        page=where,
        because=request.because,
        date=today,
    )
    line = excerpt(draft.report.pages[row.page - 1].text, row, _WIDTH)
    return entry, f"{line} ({where}; {row.message})"


def _whole_check(draft: _Draft, name: str, entry: Entry) -> tuple[Entry, str]:
    if check_named(name) is None:
        raise Unusable(unknown_check(name, check_names()))
    rows = sum(issue.check == name for issue in draft.issues)
    return entry, f"all that {name} finds ({counted(rows, 'row')} in this draft)"


def _row(report: Report, asked: str, manuscript: Path) -> RankedIssue:
    """The row whose key begins so. Raises Unusable if there is none, or more than one."""
    listed = f"Its rows and their keys: proofkit check {quoted(str(manuscript))}"
    if len(asked) < SHORTEST:
        raise Unusable(
            f"“{asked}” is too short for a key: give its four letters, as the table has them. {listed}"
        )
    found = [issue for issue in all_issues(report) if issue.key.startswith(asked)]
    if not found:
        raise Unusable(
            f"No row for {manuscript} has the key “{asked}”. {_unchecked(report)}{listed}"
        )
    if len(found) > 1:
        raise Unusable(
            f"“{asked}” is the beginning of {len(found)} keys: {_either(found)}. Give more of its letters."
        )
    return found[0]


def _unchecked(report: Report) -> str:
    return "" if report.complete else "But not everything was checked this time. "


def _either(rows: Sequence[RankedIssue]) -> str:
    return " or ".join(row.key for row in rows)
