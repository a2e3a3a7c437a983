"""The issues as an errata slip: place, for …, read …, and why."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Sequence
from dataclasses import astuple, dataclass

from rich.console import RenderableType
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

from proofkit.issue import Tier
from proofkit.report import RankedIssue, Report
from proofkit.reports.excerpt import CUT, excerpt
from proofkit.reports.fault import fault_of
from proofkit.reports.places import also, place
from proofkit.reports.terminal.theme import FAULT, INK, STRONG

TIER_HEADINGS = {Tier.ERROR: "Errors to mend", Tier.QUERY: "Queries to think about"}

_HEADS = ("no.", "place", "for", "read", "why")
_GAP = 2
_WIDEST = 132  # a longer line is hard to follow across
_NARROWEST = 72  # below this, a column would be a word wide
_WHY_LINES = 3
_EXCERPT = 42


@dataclass(frozen=True, slots=True, kw_only=True)
class _Widths:
    """How many cells each column has, in the order of the columns."""

    no: int
    place: int
    quote: int
    read: int
    why: int

    @property
    def excerpt(self) -> int:
        """How many characters of a line are quoted: in a narrow column, some more than one row has."""
        return max(self.quote, min(_EXCERPT, int(self.quote * 1.7)))


def issue_table(
    report: Report, issues: Sequence[RankedIssue], width: int
) -> Iterator[RenderableType]:
    """The slip of ``issues``, the errors before the queries; without columns where it is narrow."""
    narrow = width < _NARROWEST
    widths = _widths(report, issues, min(width, _WIDEST))
    if not narrow:
        yield _columns(widths, [[Text(head, INK) for head in _HEADS]])
    for tier, heading in TIER_HEADINGS.items():
        of_tier = [issue for issue in issues if issue.tier is tier]
        if not of_tier:
            continue
        if tier is Tier.QUERY and of_tier[0] is not issues[0] and not narrow:
            yield Text()
        yield Text(heading, STRONG)
        if narrow:
            yield from (_stacked(report, issue, width) for issue in of_tier)
        else:
            yield _columns(widths, [_cells(report, issue, widths) for issue in of_tier])


def _columns(widths: _Widths, rows: Sequence[Sequence[Text]]) -> Table:
    table = Table(box=None, show_header=False, padding=(0, _GAP, 0, 0), pad_edge=False)
    for position, cells in enumerate(astuple(widths)):
        table.add_column(width=cells, justify="right" if position == 0 else "left")
    for row in rows:
        table.add_row(*row)
    return table


def _cells(report: Report, issue: RankedIssue, widths: _Widths) -> list[Text]:
    return [
        Text(str(issue.rank), INK),
        Text(place(report, issue.page, issue.start)),
        _with_more(report, issue, _in_its_line(report, issue, widths.excerpt)),
        Text(_reading(report, issue), INK),
        Text(_shortened(issue.message, widths.why)),
    ]


def _stacked(report: Report, issue: RankedIssue, width: int) -> Padding:
    """One issue on lines of its own, for a window too narrow for columns."""
    text = Text(f"{issue.rank}  ", INK)
    text.append(place(report, issue.page, issue.start), "not bold")
    line = _in_its_line(report, issue, max(20, width - 8))
    text.append("\n").append(_with_more(report, issue, line))
    reading = _reading(report, issue)
    if reading:
        text.append(f"\nread: {reading}", INK)
    text.append(f"\n({issue.message})")
    return Padding(text, (0, 0, 1, 2))


def _in_its_line(report: Report, issue: RankedIssue, width: int) -> Text:
    found = excerpt(report.pages[issue.page - 1].text, issue, width)
    return Text.assemble(
        found.before,
        (found.opening, INK),
        (found.quote, FAULT),
        (found.closing, INK),
        found.after,
    )


def _with_more(report: Report, issue: RankedIssue, line: Text) -> Text:
    """The line, and under it where else the same matter stands."""
    more = also(report, issue)
    return line.append(f"\n({more})") if more else line


def _reading(report: Report, issue: RankedIssue) -> str:
    """What to read, with one alternative; a query asks."""
    found = fault_of(report.pages[issue.page - 1].text, issue)
    line = " or ".join(found.readings[:2])
    return f"{line}?" if line and issue.tier is Tier.QUERY else line


def _shortened(message: str, width: int) -> str:
    """The explanation on no more than three lines: it is what a narrow table gives up first."""
    return "\n".join(textwrap.wrap(message, width, max_lines=_WHY_LINES, placeholder=CUT))


def _widths(report: Report, issues: Sequence[RankedIssue], width: int) -> _Widths:
    """The words at fault get what the other columns, kept within their shares, leave over."""
    no = max(3, *(len(str(issue.rank)) for issue in issues)) + 1
    where = max(5, *(len(place(report, issue.page, issue.start)) for issue in issues))
    room = width - no - where - 4 * _GAP
    read = _share(room, 0.25, (_reading(report, issue) for issue in issues))
    why = _share(room, 0.36, (issue.message for issue in issues))
    return _Widths(no=no, place=where, quote=room - read - why, read=read, why=why)


def _share(room: int, part: float, cells: Iterator[str]) -> int:
    return min(int(room * part), max(6, *(len(cell) for cell in cells)))
