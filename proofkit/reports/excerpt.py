"""The words at fault inside a little of their line, so that nobody must look them up."""

from __future__ import annotations

import re
from dataclasses import dataclass

from proofkit.report import RankedIssue
from proofkit.reports.fault import fault_of, one_line

OPEN, CLOSE, CUT = "›", "‹", "…"

_PARAGRAPH_END = "\n\n"
_NEAR = 1000  # characters of a paragraph looked at: more than any width shows


@dataclass(frozen=True, slots=True, kw_only=True)
class Excerpt:
    """Words at fault and what stands before and after them, cut where the paragraph runs on.

    ``opening`` and ``closing`` are the marks around the words; both are empty where the issue is about
    the page as such and no word is at fault.
    """

    before: str
    quote: str
    after: str
    opening: str = OPEN
    closing: str = CLOSE

    def __str__(self) -> str:
        return f"{self.before}{self.opening}{self.quote}{self.closing}{self.after}"


def excerpt(text: str, issue: RankedIssue, width: int) -> Excerpt:
    """The issue's words inside their line of a page's ``text``, in about ``width`` characters.

    The words at fault are never given up for their surroundings. Only a passage that has no reading of
    its own, or words that would fill two lines, are cut in the middle.
    """
    fault = fault_of(text, issue)
    near = max(0, fault.start - _NEAR), fault.end + _NEAR
    before = one_line(text[near[0] : fault.start].rpartition(_PARAGRAPH_END)[2])
    after = one_line(text[fault.end : near[1]].partition(_PARAGRAPH_END)[0])
    quote = _cut_middle(fault.quote, 2 * width if fault.readings else width - 2)
    room = max(0, width - len(quote) - 2)
    before = _last_words(before, max(room // 2, room - len(after)))
    after = _first_words(after, room - len(before))
    if not quote and not fault.readings:
        return Excerpt(before=before, quote="", after=after, opening="", closing="")
    return Excerpt(before=before, quote=quote, after=after)


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
