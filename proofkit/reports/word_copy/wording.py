"""What a comment says: for an error the correction first, then why; a query asks; then the key."""

from __future__ import annotations

import re

from proofkit.issue import Tier
from proofkit.report import RankedIssue, Report
from proofkit.reports.fault import Fault, fault_of, one_line
from proofkit.reports.phrases import why
from proofkit.reports.places import also

_MOST_READINGS = 3
_LONGEST_QUOTE = 60
_QUOTATION_MARKS = frozenset('“”‘"')
_TAKE_OUT = "(take out)"
_SENTENCE_END = re.compile(r"[.!?…][”’\"')]*$")


def comment_text(report: Report, issue: RankedIssue, key: str, beside: str = "") -> str:
    """The comment on an issue: *Read “from”. A wrong word that is a word. [k7f2]*.

    ``key`` is the key as the author types it; ``beside`` is what the words stand in where the comment
    can't be at them ("footnote").
    """
    fault = fault_of(report.pages[issue.page - 1].text, issue)
    reading = _reading(fault, shown=bool(beside) or (fault.start, fault.end) != _ends(issue))
    reason = one_line(why(report, issue))
    elsewhere = _sentence(also(report, issue))
    where = f"in the {beside}{_quoted(fault, reading)}: " if beside else ""
    if issue.tier is Tier.ERROR:
        what = _sentence(f"{where}{reading or reason}")
        said = " ".join(filter(None, [what, _sentence(reason) if reading else "", elsewhere]))
    else:
        ask = f"{_opening(reading)}?" if reading else "Let it stand?"
        said = " ".join(filter(None, [f"Query: {where}{_stopped(reason)}", elsewhere, ask]))
    return f"{said} [{key}]"


def _ends(issue: RankedIssue) -> tuple[int, int]:
    return issue.start, issue.end


def _reading(fault: Fault, *, shown: bool) -> str:
    """What to read: "read “from”", "take it out"; with the words at fault where they are to be ``shown``."""
    readings = fault.readings[:_MOST_READINGS]
    if not readings:
        return ""
    if readings == (_TAKE_OUT,):
        return f"take out {_marked(_short(fault.quote))}" if shown else "take it out"
    offered = " or ".join("nothing" if r == _TAKE_OUT else _marked(r) for r in readings)
    return f"for {_marked(_short(fault.quote))} read {offered}" if shown else f"read {offered}"


def _quoted(fault: Fault, reading: str) -> str:
    """The words at fault, where what to read doesn't give them."""
    return "" if reading or not fault.quote else f", {_marked(_short(fault.quote))}"


def _marked(words: str) -> str:
    """The words between marks: quotation marks, or the table's where they have some themselves."""
    return f"›{words}‹" if _QUOTATION_MARKS.intersection(words) else f"“{words}”"


def _short(words: str) -> str:
    return words if len(words) <= _LONGEST_QUOTE else f"{words[:_LONGEST_QUOTE].rstrip()}…"


def _opening(phrase: str) -> str:
    return phrase[:1].upper() + phrase[1:]


def _sentence(phrase: str) -> str:
    return _opening(_stopped(phrase))


def _stopped(phrase: str) -> str:
    return phrase if not phrase or _SENTENCE_END.search(phrase) else f"{phrase}."
