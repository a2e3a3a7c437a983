"""The corrections of a book in its own order, each as the slip and the margin have it."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from proofkit.issue import Tier
from proofkit.report import LetStand, RankedIssue, Report
from proofkit.reports.excerpt import excerpt
from proofkit.reports.fault import SPACE, fault_of, one_line
from proofkit.reports.keys import short_keys
from proofkit.reports.phrases import why
from proofkit.reports.places import also
from proofkit.reports.proof.marks import Kind, Mark, mark_of

_QUOTED = 60  # characters of the words at fault that the slip repeats
_WORD = 24  # characters of a word before them that come along
_IN_MARGIN = 18  # characters of new matter that the margin holds
_LAST_WORD = re.compile(r"\S*\Z")


@dataclass(frozen=True, slots=True, kw_only=True)
class Correction:
    """One issue on the proof.

    ``number``   its place among the book's corrections, from 1
    ``issue``    the issue itself
    ``start``, ``end``  the characters of its page that the mark is on
    ``margin``   the new matter as written in the margin, or ""
    ``quote``, ``read``  what the slip has after "for" and after "read", or ""
    ``why``      what is the matter; ``also`` where else it stands, or ""
    ``sure``     how sure it is, in words
    ``because``  the author's reason to let it stand, or ""
    """

    number: int
    issue: RankedIssue
    kind: Kind
    start: int
    end: int
    margin: str
    quote: str
    read: str
    why: str
    also: str
    sure: str
    short_key: str
    because: str = ""

    @property
    def tier(self) -> str:
        """Under which heading it is looked for: "error", "query" or "stet"."""
        return "stet" if self.kind is Kind.STET else self.issue.tier.value

    @property
    def family(self) -> str:
        """What sort of thing it is about: "spelling"."""
        return self.issue.check.partition("/")[0]

    @property
    def asks(self) -> bool:
        """Whether it is put as a question."""
        return self.issue.tier is Tier.QUERY

    @property
    def spoken(self) -> str:
        """The mark in words, for those who hear it."""
        parts = [self.kind.value]
        if self.quote:
            parts.append(f"for “{self.quote}”")
        if self.read:
            parts.append(f"read “{self.read}”{'?' if self.asks else ''}")
        return f"no. {self.number}, {' '.join([f'{parts[0]}:', *parts[1:]]) if parts[1:] else parts[0]}"


def corrections(report: Report, *, show_stet: bool = False) -> tuple[Correction, ...]:
    """All of the report's issues, in the order of the book; with those let stand if they are to show."""
    stands = {each.issue.key: each for each in report.let_stand} if show_stet else {}
    issues = (*report.issues, *(each.issue for each in stands.values()))
    in_order = sorted(issues, key=lambda each: (each.page, each.start, each.end, each.rank))
    keys = short_keys(report)
    return tuple(
        _correction(report, number, issue, stands.get(issue.key), keys)
        for number, issue in enumerate(in_order, 1)
    )


def how_sure(confidence: float) -> str:
    """A confidence, from 0 to 1, in words."""
    if confidence >= 0.9:
        return "sure"
    return "likely" if confidence >= 0.7 else "worth a look"


def _correction(
    report: Report,
    number: int,
    issue: RankedIssue,
    stands: LetStand | None,
    keys: Mapping[str, str],
) -> Correction:
    text = report.pages[issue.page - 1].text
    # What is to stand is marked whole: nothing of it changes.
    reading = None if stands else next(iter(issue.suggestions), None)
    mark = mark_of(issue.quote, reading)
    along = _word_before(text, issue)
    return Correction(
        number=number,
        issue=issue,
        kind=Kind.STET if stands else mark.kind,
        start=issue.start + mark.start,
        end=issue.start + mark.end,
        margin=_margin(mark),
        quote=along + excerpt(text, issue, _QUOTED).quote,
        read=" or ".join(along + reading for reading in fault_of(text, issue).readings[:2]),
        why=why(report, issue),
        also=also(report, issue),
        sure=how_sure(issue.confidence),
        short_key=keys[issue.key],
        because=one_line(stands.because) if stands else "",
    )


def _word_before(text: str, issue: RankedIssue) -> str:
    """The word before words at fault that begin with a space: without it a slip could not be read."""
    if not issue.quote[:1].isspace() or not issue.quote.strip():
        return ""
    word = _LAST_WORD.search(text, max(0, issue.start - _WORD), issue.start)
    return one_line(word.group()) if word else ""


def _margin(mark: Mark) -> str:
    """The new matter where there is some to write; a space at its end is shown."""
    if mark.kind not in (Kind.INSERT, Kind.SUBSTITUTE):
        return ""
    new = one_line(mark.new)
    if len(new) > _IN_MARGIN:
        return f"{new[: _IN_MARGIN - 1].rstrip()}…"
    bare = new.strip()
    ends = SPACE if new.endswith(" ") and not bare.isalpha() else ""
    return f"{bare}{ends}" if bare else SPACE
