"""The report where no terminal shows it: tab-separated, without decoration, nothing cut short."""

from __future__ import annotations

from proofkit.report import RankedIssue, Report
from proofkit.reports.excerpt import excerpt
from proofkit.reports.fault import fault_of
from proofkit.reports.pacing import MEASURES, grade_shown, sentences_on_reading, steps, unit
from proofkit.reports.phrases import about, confirmable, held_back, next_step, tally, title
from proofkit.reports.places import also, place
from proofkit.reports.shown import rows_shown

_CONTEXT = 60


def as_plain(report: Report, *, limit: int = 0) -> str:
    """The same lines as on a terminal; the rows of the table have a tab between their cells.

    ``limit`` is how many rows are shown, 0 for all.
    """
    shown, hidden = rows_shown(report, limit)
    lines = [f"{title(report)}: {about(report)}", tally(report)]
    lines += [f"Note: {notice.text}" for notice in report.notices]
    if report.issues:
        lines.append("\t".join(("no.", "tier", "place", "for", "read", "why", "check")))
        lines += [_row(report, issue) for issue in shown]
    if hidden:
        lines.append(str(held_back(hidden, report)))
    if report.words_to_confirm:
        words = "; ".join(confirmable(report, word) for word in report.words_to_confirm)
        lines.append(f"Not in the dictionary, and taken for yours: {words}")
    lines += _pacing(report)
    lines += sentences_on_reading(report)
    lines.append(str(next_step(report)))
    return "\n".join(lines) + "\n"


def _pacing(report: Report) -> list[str]:
    found = steps(report)
    if not found:
        return []
    rows = [
        f"{step.name}\t{step.words}\t{step.longest_sentence}\t{grade_shown(step.grade)}"
        for step in found
    ]
    return ["\t".join((unit(report), *MEASURES)), *rows]


def _row(report: Report, issue: RankedIssue) -> str:
    text = report.pages[issue.page - 1].text
    cells = (
        str(issue.rank),
        issue.tier.value,
        place(report, issue.page, issue.start),
        str(excerpt(text, issue, _CONTEXT)),
        " or ".join(fault_of(text, issue).readings),
        "; ".join(filter(None, (issue.message, also(report, issue)))),
        issue.check,
    )
    return "\t".join(" ".join(cell.split()) for cell in cells)
