"""The report where no terminal shows it: tab-separated, without decoration, nothing cut short."""

from __future__ import annotations

from proofkit.report import LetStand, RankedIssue, Report
from proofkit.reports.excerpt import excerpt
from proofkit.reports.fault import fault_of
from proofkit.reports.pacing import MEASURES, grade_shown, sentences_on_reading, steps, unit
from proofkit.reports.phrases import (
    about,
    confirmable,
    held_back,
    let_stand,
    more_about,
    next_step,
    since_last,
    tally,
    title,
    why,
)
from proofkit.reports.places import also, place
from proofkit.reports.shown import rows_shown

_CONTEXT = 60


_HEADS = ("no.", "tier", "place", "for", "read", "why", "check", "key")


def as_plain(report: Report, *, limit: int = 0, show_stet: bool = False) -> str:
    """The same lines as on a terminal; the rows of the table have a tab between their cells.

    ``limit`` is how many rows are shown, 0 for all; with ``show_stet`` those let stand come after.
    """
    shown, hidden = rows_shown(report, limit)
    lines = [f"{title(report)}: {about(report)}"]
    lines += [line for line in (since_last(report), tally(report)) if line]
    lines += [f"Note: {notice.text}" for notice in report.notices]
    stands = report.let_stand if show_stet else ()
    if report.issues or stands:
        lines.append("\t".join(_HEADS))
        lines += [_row(report, issue) for issue in shown]
        lines += [_standing(report, each) for each in stands]
    if hidden:
        lines.append(str(held_back(hidden, report)))
    if report.let_stand and not show_stet:
        lines.append(str(let_stand(report)))
    if report.words_to_confirm:
        words = "; ".join(confirmable(report, word) for word in report.words_to_confirm)
        lines.append(f"Not in the dictionary, and taken for yours: {words}")
    lines += _pacing(report)
    lines += sentences_on_reading(report)
    if report.issues:
        lines.append(str(more_about(report)))
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


def _standing(report: Report, stands: LetStand) -> str:
    reason = f"let stand: {stands.because}" if stands.because else "let stand"
    return _row(report, stands.issue, tier="stet", reason=reason)


def _row(report: Report, issue: RankedIssue, *, tier: str = "", reason: str = "") -> str:
    text = report.pages[issue.page - 1].text
    cells = (
        str(issue.rank),
        tier or issue.tier.value,
        place(report, issue.page, issue.start),
        str(excerpt(text, issue, _CONTEXT)),
        " or ".join(fault_of(text, issue).readings),
        "; ".join(filter(None, (why(report, issue), also(report, issue), reason))),
        issue.check,
        issue.key,
    )
    return "\t".join(" ".join(cell.split()) for cell in cells)
