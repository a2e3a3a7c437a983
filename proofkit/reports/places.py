"""Where something stands, in the words that the author has for it."""

from __future__ import annotations

import re
from collections.abc import Iterable
from itertools import groupby
from typing import Protocol

from proofkit.book import Role
from proofkit.report import RankedIssue, Report
from proofkit.reports.fault import one_line

_NUMBERED = re.compile(r"(page|spread|paragraph) (\d+)")
_LABEL = re.compile(
    r"(?P<kind>double[- ]spread|spread|pages?|pp?\.?)\s*(?P<numbers>\d+(?:\s*(?:[-–—&,/+]|to|and)\s*\d+)*)",
    re.IGNORECASE,
)
_LONGEST_LABEL = 18
_NOT_STORY = {
    Role.TITLE: "title page",
    Role.AUTHOR: "title page",
    Role.DEDICATION: "dedication",
    Role.IMPRINT: "imprint page",
    Role.BACK_MATTER: "back matter",
}


class NamedPage(Protocol):
    """A page as its name needs it: of a report, or of a style sheet."""

    @property
    def number(self) -> int: ...

    @property
    def label(self) -> str: ...

    @property
    def spread(self) -> int | None: ...

    @property
    def role(self) -> Role: ...


def place(report: Report, page: int, start: int) -> str:
    """The place of character ``start`` of the ``page``th page: "spread 4", "page 6", "paragraph 12"."""
    here = report.pages[page - 1]
    if report.manuscript.paginated or here.role in _NOT_STORY:
        return page_name(here)
    paragraph = here.text.count("\n\n", 0, start) + 1
    return f"paragraph {paragraph}"


def also(report: Report, issue: RankedIssue) -> str:
    """Where else the same matter stands: "also on spreads 4 and 6"; "" where nowhere but here."""
    here = place(report, issue.page, issue.start)
    if not report.manuscript.paginated:
        names = dict.fromkeys(place(report, span.page, span.start) for span in issue.related)
        elsewhere = in_one_phrase([name for name in names if name != here])
    else:
        pages = (span.page for span in issue.related)
        elsewhere = pages_named(
            report, (p for p in pages if page_name(report.pages[p - 1]) != here)
        )
    preposition = "in" if elsewhere.startswith("paragraph") else "on"
    return f"also {preposition} {elsewhere}" if elsewhere else ""


def page_name(page: NamedPage) -> str:
    """What the author calls the page, from the label that the manuscript gives it."""
    if page.role in _NOT_STORY:
        return _NOT_STORY[page.role]
    if page.label:
        return _label(page.label)
    return f"page {page.number}" if page.spread is None else f"spread {page.spread}"


def pages_named(report: Report, numbers: Iterable[int]) -> str:
    """Several pages in one phrase: "spreads 2, 4–6 and 9"; "" where no pages are marked."""
    if not report.manuscript.paginated:
        return ""
    return in_one_phrase(
        list(dict.fromkeys(page_name(report.pages[number - 1]) for number in numbers))
    )


def listed(parts: list[str]) -> str:
    """The parts with commas, and "and" before the last."""
    if len(parts) < 2:
        return "".join(parts)
    return f"{', '.join(parts[:-1])} and {parts[-1]}"


def in_one_phrase(names: list[str]) -> str:
    """Names of pages in one phrase: "spreads 2, 4–6 and 9"."""
    phrases = []
    for kind, group in groupby(names, key=_kind):
        members = list(group)
        if not kind:
            phrases += members
            continue
        values = [int(name.rpartition(" ")[2]) for name in members]
        phrases.append(f"{kind}{'s' if len(values) > 1 else ''} {listed(_runs(values))}")
    return listed(phrases)


def _kind(name: str) -> str:
    numbered = _NUMBERED.fullmatch(name)
    return numbered.group(1) if numbered else ""


def _runs(values: list[int]) -> list[str]:
    runs: list[list[int]] = []
    for value in values:
        if runs and value == runs[-1][-1] + 1:
            runs[-1].append(value)
        else:
            runs.append([value])
    parts = []
    for run in runs:
        parts += [f"{run[0]}–{run[-1]}"] if len(run) > 2 else [str(value) for value in run]
    return parts


def _label(label: str) -> str:
    found = _LABEL.search(label)
    if found is None:
        short = one_line(label).strip("[](){}*_#:.-–—=~ ")
        return short if len(short) <= _LONGEST_LABEL else short[: _LONGEST_LABEL - 1].rstrip() + "…"
    numbers = re.sub(r"\s*[-–—]\s*", "–", found["numbers"])
    if "spread" in found["kind"].lower():
        return f"spread {numbers}"
    return f"page {numbers}" if numbers.isdigit() else f"pages {numbers}"
