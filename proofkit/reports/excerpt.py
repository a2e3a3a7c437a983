"""The words at fault inside a little of their line, so that nobody must look them up."""

from __future__ import annotations

import re
from dataclasses import dataclass

from proofkit.report import RankedIssue

OPEN, CLOSE, CUT, SPACE = "›", "‹", "…", "␣"

_PARAGRAPH_END = "\n\n"
# A single space between two words can be seen as it stands; every other one can't.
_UNSEEN_SPACE = re.compile(r"(?<=\s)\s|\s(?=\s)|(?<!\w)\s|\s(?!\w)|[^\S \n]")
_TAKEN_OUT = "(take out)"


@dataclass(frozen=True, slots=True, kw_only=True)
class Excerpt:
    """Words at fault and what stands before and after them, cut where the paragraph runs on."""

    before: str
    quote: str
    after: str

    def __str__(self) -> str:
        return f"{self.before}{OPEN}{self.quote}{CLOSE}{self.after}"


def excerpt(text: str, issue: RankedIssue, width: int) -> Excerpt:
    """The issue's words inside their line of a page's ``text``, in about ``width`` characters.

    The words at fault are never given up for their surroundings. Only a passage that has no reading of
    its own, or words that would fill two lines, are cut in the middle.
    """
    first = text.rfind(_PARAGRAPH_END, 0, issue.start)
    last = text.find(_PARAGRAPH_END, issue.end)
    before = _one_line(text[0 if first < 0 else first + 2 : issue.start])
    after = _one_line(text[issue.end : len(text) if last < 0 else last])
    quote = _cut_middle(_shown_quote(issue), 2 * width if issue.suggestions else width - 2)
    room = max(0, width - len(quote) - 2)
    left = max(room // 2, room - len(after))
    before = _last_words(before, left)
    return Excerpt(before=before, quote=quote, after=_first_words(after, room - len(before)))


def readings(issue: RankedIssue) -> tuple[str, ...]:
    """What to read instead, best first, in a form that can be seen: a deletion says so."""
    return tuple(_shown_reading(issue, suggestion) for suggestion in issue.suggestions)


def _shown_reading(issue: RankedIssue, suggestion: str) -> str:
    if suggestion == "":
        return "(no space)" if issue.quote and not issue.quote.strip() else _TAKEN_OUT
    if not suggestion.strip():
        return "(a new line)" if "\n" in suggestion else "(one space)"
    line = _visible_spaces(suggestion) if _spaces_only(issue.quote, suggestion) else suggestion
    return _one_line(line)


def _shown_quote(issue: RankedIssue) -> str:
    about_spaces = any(_spaces_only(issue.quote, reading) for reading in issue.suggestions)
    return _one_line(_visible_spaces(issue.quote) if about_spaces else issue.quote)


def _spaces_only(quote: str, reading: str) -> bool:
    """Whether the two differ in nothing but their spaces."""
    return "".join(quote.split()) == "".join(reading.split())


def _visible_spaces(text: str) -> str:
    return _UNSEEN_SPACE.sub(SPACE, text)


def _one_line(text: str) -> str:
    return re.sub(r"\s+", " ", text)


def _cut_middle(text: str, width: int) -> str:
    if len(text) <= width:
        return text
    half = (width - 3) // 2
    head = text[: half + 1].rpartition(" ")[0] or text[:half]
    tail = text[-half - 1 :].partition(" ")[2] or text[-half:]
    return f"{head} {CUT} {tail}"


def _last_words(text: str, width: int) -> str:
    if len(text) <= width:
        return text
    starts = (word.start() for word in re.finditer(r"\S+", text))
    at = next((start for start in starts if len(text) - start <= width - 2), len(text.rstrip()))
    return f"{CUT} {text[at:]}" if text[at:].strip() else CUT + text[at:]


def _first_words(text: str, width: int) -> str:
    if len(text) <= width:
        return text
    ends = [word.end() for word in re.finditer(r"\S+", text)]
    at = max((end for end in ends if end <= width - 2), default=len(text) - len(text.lstrip()))
    return f"{text[:at]} {CUT}" if text[:at].strip() else text[:at] + CUT
