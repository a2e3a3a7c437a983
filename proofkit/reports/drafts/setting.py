"""What is said of a book's drafts, the same wherever it is shown."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime
from pathlib import PurePath

from proofkit.drafts.summary import Summary, days_between
from proofkit.reports.fault import one_line
from proofkit.reports.phrases import counted

# In the order of the table; what is named here may be left out of a narrow one, the first first.
HEADS = (
    "no.",
    "date",
    "days",
    "file",
    "words",
    "spreads",
    "errors",
    "queries",
    "per 1,000",
    "fixed",
    "new",
    "grade",
    "heaviest",
)
SPARED = ("heaviest", "spreads", "per 1,000", "days", "grade", "file", "words", "date")
NUMBERS = frozenset(HEADS) - {"date", "file", "heaviest"}


def title(drafts: Sequence[Summary]) -> str:
    """The book's title as its newest draft has it, or the newest file's name."""
    newest = drafts[-1]
    return one_line(newest.title) or PurePath(newest.file).stem


def about(drafts: Sequence[Summary]) -> str:
    """The first line, without the title: how many drafts, since when, and how far they came."""
    first, newest = drafts[0], drafts[-1]
    if len(drafts) == 1:
        return f"1 draft, of {day(first.date)}: {_found(first)}"
    return (
        f"{len(drafts)} drafts from {day(first.date)} to {day(newest.date)}: errors {first.errors} → "
        f"{newest.errors}, queries {first.queries} → {newest.queries}"
    )


def rows(drafts: Sequence[Summary]) -> Iterator[tuple[str, ...]]:
    """The cells of each draft, as ``HEADS`` names them."""
    before: Summary | None = None
    for draft in drafts:
        yield (
            str(draft.number),
            day(draft.date),
            str(days_between(before.date, draft.date)) if before else "",
            one_line(PurePath(draft.file).name),
            f"{draft.words:,}",
            str(draft.spreads or ""),
            str(draft.errors),
            str(draft.queries),
            f"{draft.per_thousand:.1f}" if draft.words else "",
            str(draft.counts.fixed) if before else "",
            str(draft.counts.new + draft.counts.back_again) if before else "",
            "" if draft.grade is None else f"{draft.grade:.1f}",
            f"spread {draft.heaviest.spread}: {draft.heaviest.words}" if draft.heaviest else "",
        )
        before = draft


def remarks(drafts: Sequence[Summary]) -> Iterator[str]:
    """Sentences under the table: what a reader of it must know, and how near the book is to being handed over."""
    half = [str(draft.number) for draft in drafts if not draft.complete]
    if half:
        yield f"Not everything was checked in no. {', '.join(half)}."
    if any(draft.counts.back_again for draft in drafts):
        yield "A slip that was made again after it was mended counts as new here."
    yield progress(drafts)


def progress(drafts: Sequence[Summary]) -> str:
    """How near the book is to being handed over."""
    newest = drafts[-1]
    if not newest.complete:
        return "Before handing over: check again, so that everything is checked."
    if newest.errors or newest.queries:
        return f"Before handing over: {_found(newest)}."
    quiet = drafts_without_new_error(drafts)
    since = f", and {_drafts(quiet)} without a new error" if quiet > 1 else ""
    return f"No errors, and every query answered{since}. A human proofreader comes next."


def drafts_without_new_error(drafts: Sequence[Summary]) -> int:
    """How many drafts in a row, the newest last, had no error that was new or back again."""
    quiet = 0
    for draft in reversed(drafts):
        if draft.of_errors.new or draft.of_errors.back_again:
            break
        quiet += 1
    return quiet


def day(date: datetime) -> str:
    """A day as 2026-11-25: it sorts, and is the same in both Englishes."""
    return date.date().isoformat()


def _found(draft: Summary) -> str:
    errors = counted(draft.errors, "error") if draft.errors else "no errors"
    queries = counted(draft.queries, "query") if draft.queries else "no queries"
    return f"{errors} to mend, {queries} to think about"


def _drafts(number: int) -> str:
    return counted(number, "draft")
