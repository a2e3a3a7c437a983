"""Print how often what is shown with 0.8 is true, and each check's count of true and false.

    python -m tests.bench.calibration

An issue on a marked book is true where it touches a mark, as the shared ruler sees it; on a story of
``tests/stories``, which are known to be clean, every issue is false. Wants ``../shared/books``. Those
books were in sight when the checks were written: a poor figure tells, a good one proves little.
"""

from __future__ import annotations

import sys
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator
from itertools import pairwise
from pathlib import Path

import msgspec

from proofkit.engines.folders import memory_file
from proofkit.engines.memory import Memory
from proofkit.pipeline import check_manuscripts
from proofkit.report import RankedIssue, Report
from proofkit.settings import Choices

PROJECT = Path(__file__).resolve().parents[2]
SHARED = PROJECT.parent / "shared" / "books"
STORIES = PROJECT / "tests" / "stories"
STEPS = (0.0, 0.5, 0.6, 0.7, 0.8, 0.9, 1.01)


class Mark(msgspec.Struct, frozen=True):
    """What a proofreader marked; ``start`` and ``end`` count characters that are not white space."""

    book: str
    page: int
    start: int
    end: int


def main() -> None:
    """Count and print."""
    if not SHARED.exists():
        sys.exit("The marked books are not beside the project: nothing to count.")
    judged = list(_judged())
    for low, high in pairwise(STEPS):
        verdicts = [true for issue, true in judged if low <= issue.confidence < high]
        if verdicts:
            share = sum(verdicts) / len(verdicts)
            print(
                f"shown with {low:.1f} to {min(high, 1):.1f}: {share:.2f} of {len(verdicts)} true"
            )
    counts: dict[str, Counter[bool]] = defaultdict(Counter)
    for issue, true in judged:
        counts[issue.check][true] += 1
    for check, count in sorted(counts.items()):
        print(f"{check:40} {count[True]:3} true {count[False]:3} false")


def _judged() -> Iterator[tuple[RankedIssue, bool]]:
    marks = msgspec.json.decode((SHARED / "dev-marks.json").read_bytes(), type=list[Mark])
    for report in _reports((SHARED / "dev").glob("*.md")):
        name = Path(report.manuscript.path).name
        numbers = _numbers(report)
        for issue in report.issues:
            here = [m for m in marks if m.book == name and m.page == numbers.get(issue.page)]
            yield issue, any(_touches(report, issue, mark) for mark in here)
    for report in _reports(STORIES.glob("*.md")):
        yield from ((issue, False) for issue in report.issues)


def _reports(paths: Iterable[Path]) -> Iterator[Report]:
    memory = Memory(memory_file())
    for outcome in check_manuscripts(sorted(paths), Choices(), memory=memory):
        if outcome.report is None:
            sys.exit(outcome.problem)
        yield outcome.report
    memory.close()


def _numbers(report: Report) -> dict[int, int]:
    """The marks' number of each page: pages with a bare heading, counted from 1."""
    pages = [page.number for page in report.pages if page.role == "story"]
    return {place: number for number, place in enumerate(pages, 1)}


def _touches(report: Report, issue: RankedIssue, mark: Mark) -> bool:
    text = report.pages[issue.page - 1].text
    start, end = (len("".join(text[:at].split())) for at in (issue.start, issue.end))
    return mark.start - 1 < end and start < mark.end + 1


if __name__ == "__main__":
    main()
