"""The work of ``proofkit drafts``: a book's ledger, listed, exported, added to."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from pathlib import Path

from proofkit.cli.drafts import DraftsFormat
from proofkit.cli.guard import Exit
from proofkit.drafts.changes import changes_between
from proofkit.drafts.exchange import exported, import_into
from proofkit.drafts.fresh_eyes import fresh_eyes
from proofkit.drafts.ledger import draft_numbered, summaries
from proofkit.drafts.ledger_file import LEDGER
from proofkit.drafts.matching import compared_with_last
from proofkit.drafts.summary import Summary
from proofkit.own_file import FILE_NAME
from proofkit.problem import Unusable
from proofkit.reports.drafts.comparing import as_plain as as_comparison
from proofkit.reports.drafts.csv_drafts import as_csv
from proofkit.reports.drafts.eyes import where_slips_hide
from proofkit.reports.drafts.json_drafts import as_json
from proofkit.reports.drafts.plain import as_plain
from proofkit.reports.drafts.setting import day
from proofkit.reports.phrases import counted, quoted
from proofkit.reports.writing import check_target, write_report

_WHAT = "list of drafts"
_BYTE_ORDER_MARK = "\ufeff"  # without it a spreadsheet takes UTF-8 for an old code page


def hand_over(where: Path, format_: DraftsFormat | None, output: Path | None) -> Exit:
    """List the drafts of the book in a folder, or of a manuscript's book.

    Raises Unusable where there are none, or where the list can't be written.
    """
    ledger = _ledger(where)
    format_ = format_ or _implied(output)
    if output is not None:
        check_target(output, [ledger], _WHAT)
    drafts = summaries(ledger)
    if not drafts:
        raise Unusable(f"No draft of the book in {ledger.parent} was checked yet.")
    told = format_ in (DraftsFormat.TABLE, DraftsFormat.HTML)
    hiding = _hiding(ledger, drafts[-1]) if told else []
    if format_ is DraftsFormat.HTML:
        content = _page(ledger, hiding)
    else:
        content = _content(drafts, format_, hiding, in_file=output is not None)
    if output is not None:
        write_report(output, content, _WHAT)
        print(f"{counted(len(drafts), 'draft')} listed in {output}")
    elif format_ is DraftsFormat.TABLE and sys.stdout.isatty():
        _show(drafts, hiding)
    else:
        sys.stdout.flush()
        sys.stdout.buffer.write(content)
        sys.stdout.buffer.flush()
    return Exit.CLEAN


def compare_drafts(a: str, b: str, book: Path) -> Exit:
    """Tell what is different between two drafts, the earlier one first.

    Raises Unusable where one is not in the ledger.
    """
    ledger = _ledger(book)
    drafts = summaries(ledger)
    numbers = sorted({named(drafts, a), named(drafts, b)})
    if len(numbers) == 1:
        raise Unusable(
            f"“{a}” and “{b}” are one and the same, draft {numbers[0]}. Name two drafts."
        )
    was, now = (draft_numbered(ledger, number) for number in numbers)
    if was is None or now is None:
        raise Unusable(f"The drafts {numbers[0]} and {numbers[1]} are no longer in {ledger}.")
    found = compared_with_last(was, now)
    print(as_comparison(was, now, changes_between(was, now), found), end="", flush=True)
    return Exit.CLEAN


def named(drafts: Sequence[Summary], asked: str) -> int:
    """The number of the draft that is meant: by its number, its day (the last one of it) or its file.

    Raises Unusable where none is.
    """
    wanted = asked.strip().removeprefix("#")
    for draft in reversed(drafts):
        names = (str(draft.number), day(draft.date), draft.file, Path(draft.file).name)
        if wanted in names or Path(wanted).name == Path(draft.file).name:
            return draft.number
    there = f"There are 1 to {len(drafts)}" if drafts else "There are none yet"
    raise Unusable(
        f"No draft has the number, the date or the file “{asked}”. {there}: proofkit drafts lists them."
    )


def export_to(file: Path, book: Path) -> Exit:
    """Write the whole ledger as JSON. Raises Unusable where it can't be read or the file not written."""
    ledger = _ledger(book)
    check_target(file, [ledger], "export")
    content = exported(ledger)
    write_report(file, content, "export")
    drafts = counted(len(summaries(ledger)), "draft")
    print(
        f"{drafts} written to {file}. On another computer, in the book’s folder: proofkit drafts import "
        f"{quoted(file.name)}"
    )
    return Exit.CLEAN


def import_from(file: Path, book: Path) -> Exit:
    """Bring drafts into a book's ledger. Raises Unusable where either can't be used."""
    ledger = _ledger(book)
    if not (ledger.parent / FILE_NAME).is_file():
        raise Unusable(
            f"{ledger.parent} is no book’s folder yet: it has no {FILE_NAME}. Write one first: proofkit begin "
            f"{quoted(str(ledger.parent))}"
        )
    done = import_into(ledger, file)
    known = (
        f"; {done.known:,} {'was' if done.known == 1 else 'were'} here already"
        if done.known
        else ""
    )
    print(f"{counted(done.added, 'draft')} brought in{known}. To see all: proofkit drafts")
    return Exit.CLEAN


def _ledger(where: Path) -> Path:
    if where.is_dir():
        return where / LEDGER
    if where.exists():
        return where.parent / LEDGER
    raise Unusable(
        f"There is no file or folder {where}. Name the book’s folder, or a manuscript in it."
    )


def _implied(output: Path | None) -> DraftsFormat:
    """The format where none is asked for: a file's ending tells."""
    ending = output.suffix.lower() if output else ""
    endings = {f".{each}": each for each in DraftsFormat if each is not DraftsFormat.TABLE}
    return endings.get(ending, DraftsFormat.TABLE)


def _hiding(ledger: Path, newest: Summary) -> list[str]:
    """Where slips hide in the newest draft."""
    draft = draft_numbered(ledger, newest.number)
    if draft is None or newest.against is None:
        return []
    eyes = fresh_eyes(ledger, newest.number, newest.against, days=0)
    return list(where_slips_hide(eyes, draft.pages))


def _page(ledger: Path, hiding: Sequence[str]) -> bytes:
    # Loaded here: no other form waits for what draws and sets the page.
    from proofkit.drafts.course import course_of  # noqa: PLC0415
    from proofkit.reports.drafts.page import as_html  # noqa: PLC0415

    return as_html(course_of(ledger), hiding).encode()


def _content(
    drafts: Sequence[Summary],
    format_: DraftsFormat,
    hiding: Sequence[str],
    *,
    in_file: bool = False,
) -> bytes:
    if format_ is DraftsFormat.JSON:
        return as_json(drafts)
    if format_ is DraftsFormat.CSV:
        return f"{_BYTE_ORDER_MARK if in_file else ''}{as_csv(drafts)}".encode(errors="replace")
    return as_plain(drafts, hiding).encode(errors="replace")


def _show(drafts: Sequence[Summary], hiding: Sequence[str]) -> None:
    # Loaded here: data for programs doesn't wait for it.
    from proofkit.cli.screen import console_on  # noqa: PLC0415
    from proofkit.reports.terminal.drafts import show_drafts  # noqa: PLC0415

    show_drafts(drafts, console_on(sys.stdout), hiding)
