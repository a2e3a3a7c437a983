"""The dashes of a book, each with its form."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from proofkit.book import Book, Page, Span

# What stands for a dash: an em rule, an en rule, hyphens; a lone hyphen only between spaces.
# A run of three or more is a rule across the page or a word that is left out.
_DASH = re.compile(r"(?P<before>[ ]?)(?P<rule>(?<![-–—―])(?:[—―]|–|--?)(?![-–—―]))(?P<after>[ ]?)")
_RULES = {"—": "em rule", "―": "em rule", "–": "en rule", "-": "hyphen", "--": "two hyphens"}
_MARKS = "\"'”’»)]"
_NO_WORD = ("", "\n", ",", ".", "?", "!", ";", ":")
_STOPS = (".", "!", "?", ":")
_BRACKETS = ("—", "–", "-", "(", "[")
_STRAIGHT = ('"', "'")
_OPENING = ("“", "‘", "«", "(", "[")
_WORD_BEFORE = re.compile(r"\w+$")
_WORD_AFTER = re.compile(r"\w+")
_NEAR = 30  # characters
_STUTTER = 3  # letters that are said before the word is out
ONE_SIDED = "a space on one side"


@dataclass(frozen=True, slots=True, kw_only=True)
class Dash:
    """One dash with the spaces around it. ``breaks_off``: the words before it are left unfinished."""

    span: Span
    form: str
    breaks_off: bool


def dashes(book: Book) -> Iterator[Dash]:
    """Every dash that parts words or breaks them off; none inside a word or a number, or at a line's head."""
    for page in book.pages:
        for match in _DASH.finditer(page.prose):
            dash = _dash(page, match)
            if dash is not None:
                yield dash


def _dash(page: Page, match: re.Match[str]) -> Dash | None:
    prose = page.prose
    left = prose[match.start() - 1 : match.start()] if match.start() else ""
    right = prose[match.end() : match.end() + 1]
    if not left.strip() or _opens(prose, match.start() - 1) or _inside_word(prose, match):
        return None
    spaced = (bool(match["before"]), bool(match["after"]))
    breaks_off = right in _NO_WORD or (right in _MARKS and not _opens(prose, match.end()))
    if spaced == (False, True) and (right.isupper() or left in _STOPS):
        return None  # two lines of verse that were joined, or a dash before a new start
    if breaks_off:
        # What stands after it is no word, so only the space before it says anything.
        spaced = (spaced[0], spaced[0])
    if _is_hyphen(match["rule"], right, spaced, breaks_off=breaks_off):
        return None
    form = _form(match["rule"], spaced)
    return Dash(span=page.span(*match.span()), form=form, breaks_off=breaks_off)


def _is_hyphen(rule: str, right: str, spaced: tuple[bool, bool], *, breaks_off: bool) -> bool:
    """Whether a hyphen is no more than that: it has no spaces, or ends a line."""
    return rule == "-" and not (right in _MARKS if breaks_off else all(spaced))


def _form(rule: str, spaced: tuple[bool, bool]) -> str:
    if spaced[0] != spaced[1]:
        return ONE_SIDED
    return f"spaced {_RULES[rule]}" if spaced[0] else _RULES[rule]


def _opens(prose: str, at: int) -> bool:
    """Whether the character is a mark or bracket that opens: what stands inside it comes after."""
    own, before, after = (prose[max(0, i) : max(0, i + 1)] for i in (at, at - 1, at + 1))
    if own in _OPENING:
        return True
    return own in _STRAIGHT and (not before.strip() or before in _BRACKETS) and after.isalnum()


def _inside_word(prose: str, match: re.Match[str]) -> bool:
    """A range, a year left open, a route, a stutter: no dash between words."""
    if prose[match.start() - 1].isdigit() and not prose[match.end() : match.end() + 1].isalpha():
        return True
    before = _WORD_BEFORE.search(prose, max(0, match.start() - _NEAR), match.start())
    after = _WORD_AFTER.match(prose, match.end())
    if match["before"] or match["after"] or before is None or after is None:
        return False
    if match["rule"] == "–" and before[0][0].isupper() and after[0][0].isupper():
        return True
    stutter = len(before[0]) <= _STUTTER and after[0].lower().startswith(before[0].lower())
    return stutter and match["rule"] != "--"
