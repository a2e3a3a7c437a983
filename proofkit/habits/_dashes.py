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
_CLOSING = "\"'”’»)]"
_OPENING = "\"'“‘«(["
_LINE_END = ("", "\n")
# Em rules and two hyphens are closed up unless they say otherwise.
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
    left = page.prose[match.start() - 1 : match.start()] if match.start() else ""
    right = page.prose[match.end() : match.end() + 1]
    spaced = (bool(match["before"]), bool(match["after"]))
    if left.strip() == "" or _inside_word(page, match, left, right):
        return None
    breaks_off = right in _CLOSING or right in _LINE_END or right in ",.?!;:"
    if breaks_off:
        # What stands after it is no word, so only the space before it says anything.
        spaced = (spaced[0], spaced[0])
        if match["rule"] == "-":
            return None
    form = _form(match["rule"], spaced)
    return Dash(span=page.span(*match.span()), form=form, breaks_off=breaks_off)


def _form(rule: str, spaced: tuple[bool, bool]) -> str:
    if spaced[0] != spaced[1]:
        return ONE_SIDED
    return f"spaced {_RULES[rule]}" if spaced[0] else _RULES[rule]


def _inside_word(page: Page, match: re.Match[str], left: str, right: str) -> bool:
    """A hyphen in a compound, a range, a stutter, a route: no dash between words."""
    closed = not (match["before"] or match["after"])
    if left.isdigit() and right.isdigit():
        return True
    if match["rule"] == "-" and not (match["before"] and match["after"]):
        return True
    if closed and left in _OPENING:
        return True
    before = re.search(r"\w+$", page.prose[max(0, match.start() - 30) : match.start()])
    after = re.match(r"\w+", page.prose[match.end() : match.end() + 30])
    if not closed or before is None or after is None:
        return False
    if match["rule"] == "–" and before[0][0].isupper() and after[0][0].isupper():
        return True
    return after[0].lower().startswith(before[0].lower()) and match["rule"] != "--"
