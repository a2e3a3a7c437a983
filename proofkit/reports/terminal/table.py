"""The issues as an errata slip: place, for …, read …, and why."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from rich.console import RenderableType
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

from proofkit.issue import Tier
from proofkit.report import LetStand, RankedIssue, Report
from proofkit.reports.excerpt import CUT, excerpt
from proofkit.reports.fault import fault_of
from proofkit.reports.keys import short_keys
from proofkit.reports.phrases import why
from proofkit.reports.places import also, place
from proofkit.reports.terminal.theme import FAULT, INK, STRONG

TIER_HEADINGS = {Tier.ERROR: "Errors to mend", Tier.QUERY: "Queries to think about"}
STET_HEADING = "Let stand"

_GAP = 2
_WIDEST = 132  # a longer line is hard to follow across
_NARROWEST = 72  # below this, a column would be a word wide
_KEY_APART = 100  # from here on the key has a column; below, it stands under the number
_WHY_LINES = 3
_EXCERPT = 42


@dataclass(frozen=True, slots=True, kw_only=True)
class _Widths:
    """How many cells each column has, in the order of the columns; ``key`` 0 is none of its own."""

    no: int
    place: int
    quote: int
    read: int
    why: int
    key: int

    @property
    def columns(self) -> tuple[int, ...]:
        """The columns that there are."""
        every = (self.no, self.place, self.quote, self.read, self.why, self.key)
        return tuple(width for width in every if width)

    @property
    def excerpt(self) -> int:
        """How many characters of a line are quoted: in a narrow column, some more than one row has."""
        return max(self.quote, min(_EXCERPT, int(self.quote * 1.7)))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Row:
    """An issue as a row: ``number`` as it is shown, ``key`` as it is typed, ``stands`` if it is to."""

    issue: RankedIssue
    key: str
    stands: LetStand | None = None

    @property
    def number(self) -> str:
        return "stet" if self.stands else str(self.issue.rank)

    @property
    def reason(self) -> str:
        """The author's reason to let it stand."""
        return f"let stand: {self.stands.because}" if self.stands and self.stands.because else ""


def issue_table(
    report: Report, issues: Sequence[RankedIssue], width: int, *, stands: Sequence[LetStand] = ()
) -> Iterator[RenderableType]:
    """The slip of ``issues``, the errors before the queries; without columns where it is narrow.

    What ``stands`` by the author's ruling comes last.
    """
    narrow = width < _NARROWEST
    groups = _groups(issues, stands, short_keys(report))
    widths = _widths(report, [row for rows in groups.values() for row in rows], min(width, _WIDEST))
    if not narrow:
        yield _columns(widths, [_heads(widths)])
    for position, (heading, rows) in enumerate(groups.items()):
        if position and not narrow:
            yield Text()
        yield Text(heading, STRONG)
        if narrow:
            yield from (_stacked(report, row, width) for row in rows)
        else:
            yield _columns(widths, [_cells(report, row, widths) for row in rows])


def _groups(
    issues: Sequence[RankedIssue], stands: Sequence[LetStand], keys: Mapping[str, str]
) -> dict[str, list[_Row]]:
    """The rows under their headings; a heading that has none is left out."""
    rows = {
        heading: [_Row(issue=issue, key=keys[issue.key]) for issue in issues if issue.tier is tier]
        for tier, heading in TIER_HEADINGS.items()
    }
    rows[STET_HEADING] = [
        _Row(issue=each.issue, key=keys[each.issue.key], stands=each) for each in stands
    ]
    return {heading: members for heading, members in rows.items() if members}


def _columns(widths: _Widths, rows: Sequence[Sequence[Text]]) -> Table:
    table = Table(box=None, show_header=False, padding=(0, _GAP, 0, 0), pad_edge=False)
    for position, cells in enumerate(widths.columns):
        table.add_column(width=cells, justify="right" if position == 0 else "left")
    for row in rows:
        table.add_row(*row)
    return table


def _heads(widths: _Widths) -> list[Text]:
    if widths.key:
        return [Text(head, INK) for head in ("no.", "place", "for", "read", "why", "key")]
    return [Text(head, INK) for head in ("no.\nkey", "place", "for", "read", "why")]


def _cells(report: Report, row: _Row, widths: _Widths) -> list[Text]:
    issue = row.issue
    reasons = [_shortened(text, widths.why) for text in (why(report, issue), row.reason) if text]
    cells = [
        Text(row.number if widths.key else f"{row.number}\n{row.key}", INK),
        Text(place(report, issue.page, issue.start)),
        _with_more(report, issue, _in_its_line(report, issue, widths.excerpt)),
        Text(_reading(report, issue), INK),
        Text("\n".join(reasons)),
    ]
    return [*cells, Text(row.key, INK)] if widths.key else cells


def _stacked(report: Report, row: _Row, width: int) -> Padding:
    """One issue on lines of its own, for a window too narrow for columns."""
    issue = row.issue
    text = Text(f"{row.number}  ", INK)
    text.append(place(report, issue.page, issue.start), "not bold").append(f"  {row.key}")
    line = _in_its_line(report, issue, max(20, width - 8))
    text.append("\n").append(_with_more(report, issue, line))
    reading = _reading(report, issue)
    if reading:
        text.append(f"\nread: {reading}", INK)
    text.append(f"\n({why(report, issue)})")
    if row.reason:
        text.append(f"\n({row.reason})")
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


def _widths(report: Report, rows: Sequence[_Row], width: int) -> _Widths:
    """The words at fault get what the other columns, kept within their shares, leave over."""
    longest_key = max(len(row.key) for row in rows)
    key = longest_key if width >= _KEY_APART else 0
    no = max(4, 0 if key else longest_key, *(len(row.number) + 1 for row in rows))
    where = max(5, *(len(place(report, row.issue.page, row.issue.start)) for row in rows))
    room = width - no - where - 4 * _GAP - (key + _GAP if key else 0)
    read = _share(room, 0.25, (_reading(report, row.issue) for row in rows))
    whys = _share(
        room, 0.36, (text for row in rows for text in (why(report, row.issue), row.reason))
    )
    return _Widths(no=no, place=where, quote=room - read - whys, read=read, why=whys, key=key)


def _share(room: int, part: float, cells: Iterator[str]) -> int:
    return min(int(room * part), max(6, *(len(cell) for cell in cells)))
