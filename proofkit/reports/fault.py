"""The words at fault and what to read instead, in a form that can be seen.

A comma alone, or two spaces, say nothing on a slip: the word beside them comes along, "places," for
",,". Where the fix is a space, spaces are shown.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from proofkit.report import RankedIssue

SPACE = "␣"

_MOST_ALONG = 24  # characters of a neighbour that come along
_WORD_BEFORE = re.compile(r"\S*\Z")
_WORD_AFTER = re.compile(r"\S*")
_CONTROL = re.compile(r"[\x00-\x1f\x7f-\x9f]")
# A single space between two words can be seen as it stands; every other one can't.
_UNSEEN_SPACE = re.compile(r"(?<=\s)\s|\s(?=\s)|(?<!\w)\s|\s(?!\w)|[^\S \n]")


@dataclass(frozen=True, slots=True, kw_only=True)
class Fault:
    """Characters ``start`` to ``end`` of a page as they are shown, and what to read there, best first."""

    start: int
    end: int
    quote: str
    readings: tuple[str, ...]


def fault_of(text: str, issue: RankedIssue) -> Fault:
    """What is shown of an issue on a page of that ``text``. Taking words out is said in words."""
    before, after = _along(text, issue)
    quote = f"{before}{issue.quote}{after}"
    readings = [f"{before}{suggestion}{after}" for suggestion in issue.suggestions]
    about_spaces = any(_spaces_only(quote, reading) for reading in readings)
    return Fault(
        start=issue.start - len(before),
        end=issue.end + len(after),
        quote=one_line(_visible_spaces(quote) if about_spaces else quote),
        readings=tuple(_shown(quote, reading) for reading in readings),
    )


def one_line(text: str) -> str:
    """The text with every stretch of white space as one space, and without signs that steer a terminal."""
    return _CONTROL.sub("\N{REPLACEMENT CHARACTER}", re.sub(r"\s+", " ", text))


def _along(text: str, issue: RankedIssue) -> tuple[str, str]:
    """What of the words before and after comes along, where the issue has no word of its own."""
    own = (issue.quote, *issue.suggestions)
    marks_go = issue.quote.strip() != "" and "" in issue.suggestions
    if not issue.suggestions or marks_go or any(map(_has_word, own)):
        return "", ""
    before = _WORD_BEFORE.search(text, max(0, issue.start - _MOST_ALONG), issue.start)
    after = _WORD_AFTER.match(text, issue.end, issue.end + _MOST_ALONG)
    return before.group() if before else "", after.group() if after else ""


def _has_word(text: str) -> bool:
    return any(letter.isalnum() for letter in text)


def _shown(quote: str, reading: str) -> str:
    if reading == "":
        return "(take out)"
    return one_line(_visible_spaces(reading) if _spaces_only(quote, reading) else reading)


def _spaces_only(quote: str, reading: str) -> bool:
    """Whether the two differ in nothing but their spaces."""
    return "".join(quote.split()) == "".join(reading.split())


def _visible_spaces(text: str) -> str:
    return _UNSEEN_SPACE.sub(SPACE, text)
