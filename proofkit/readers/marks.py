"""Page marks: the lines by which authors say where a page or a spread begins.

"Page 3", "Pages 4–5", "p. 6", "Spread 2", "Double spread 7:", "[Page 3]", "--- pg 8 ---", "Page four
(left)", "Title page". A mark may share its line with the text when a colon, a dash, a full stop or a
closing bracket parts the two ("Page 3: Goose woke."); without one it is no mark, so that "Page 3 was
torn" and "Spread 2 slices" stay story.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from enum import StrEnum

from proofkit.book import Role
from proofkit.readers.blocks import Part

_ONES = [
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen",
]
_NUMBERS = {word: value for value, word in enumerate(_ONES, 1)} | {
    ten + dash + one: base + value
    for ten, base in (("twenty", 20), ("thirty", 30), ("forty", 40))
    for dash in ("-", " ")
    for value, one in enumerate(_ONES[:9], 1)
}
_NUMBERS |= {"twenty": 20, "thirty": 30, "forty": 40}
_NUMBER = r"(?:\d{1,3}|" + "|".join(sorted(_NUMBERS, key=len, reverse=True)) + r")(?!\w)"
_RANGE = (
    rf"(?P<first>{_NUMBER})(?:\s*(?P<between>[-–—/&+]|,(?=\s)|and\b|to\b)\s*(?P<last>{_NUMBER}))?"
)
_SPREAD = r"double[- ]?(?:page[- ]?)?spreads?|double[- ]?pages?|dps|spreads?|openings?"
_PAGE = r"pages?|pgs?\.?|pp?\.?"
_SIDE = r"(?P<side>left|right|verso|recto|lh|rh)(?:[- ]?(?:hand)?(?:[- ]?(?:page|side))?)?"

_MARK = re.compile(
    rf"(?:(?P<spread>{_SPREAD})|(?P<page>{_PAGE}))\s*(?:no\.|number|\#|:)?\s*{_RANGE}"
    rf"(?:\s+of\s+{_NUMBER})?"
    rf"(?:\s*[,:–—-]?\s*\(?\b{_SIDE}\b\)?)?",
    re.IGNORECASE,
)
_FOLIOS_TOO = re.compile(rf"\s*[\[(,:–—-]?\s*(?:{_PAGE})\s*{_RANGE}\s*[\])]?", re.IGNORECASE)
_REST = re.compile(
    r"[*_]{0,3}(?:\s*(?:[:)\]}]|\.(?=\s|$)|[–—]|\s-(?=\s)|[-=~|]+(?=\s*$))[*_]{0,3}\s*"
    r"|\s+(?=[(\[{])|\s*\t\s*|(?<=[*_])\s+|\s*$)"
)
_SPACE = re.compile(r"\s+")
_NUMBER_ALONE = re.compile(rf"{_RANGE}\s*[.):]?", re.IGNORECASE)
_SIDE_ALONE = re.compile(rf"{_SIDE}(?P<end>\s*:|\s+[–—-](?=\s)|\.?(?=\s*$))\s*", re.IGNORECASE)
_THROUGH = {"-", "–", "—", "to"}
_LONGEST_RANGE = 12
_OPEN, _CLOSE = "[({<", "])}>"
_ORNAMENT = "*_#=~-–—•|+ \t"

_MATTERS = (
    (r"(?:half[- ]?)?title(?:[- ]page)?", Role.TITLE),
    (
        r"copyright(?: page)?|imprint(?: page)?|colophon",
        Role.IMPRINT,
    ),
    (r"dedication(?: page)?", Role.DEDICATION),
    (
        (
            r"(?:inside )?(?:front|back)[- ]cover|cover|(?:front |back )?end ?papers?|front matter|back matter"
            r"|prelims"
        ),
        Role.BACK_MATTER,
    ),
)
_MATTER = tuple((re.compile(pattern, re.IGNORECASE), role) for pattern, role in _MATTERS)
_LIST = re.compile(r"\s*(?:,|/|&|\band\b)\s*")
_WORDLESS = re.compile(
    r"(?:(?:illustration|picture|art|image)s? only|no (?:text|words)|wordless|blank)\.?",
    re.IGNORECASE,
)


class Kind(StrEnum):
    """What a mark counts."""

    PAGE = "page"
    SPREAD = "spread"
    NUMBER = "number"  # a number on a line of its own, which may count either
    MATTER = "matter"  # "Title page"
    BARE = "bare"  # a mark without words


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """A page mark. ``label`` is the author's words without brackets, ornaments and final colon.

    ``numbers``  the numbers it counts with; "1–3" gives all three
    ``folios``   the page numbers it gives; for "Spread 2 (pages 4–5)" those in brackets
    ``part``     the side of the spread that it names
    ``role``     what the page is, where the mark says so ("Page 1: title page")
    ``rest``     text that shares its line; ``aside`` whether that is a note inside its brackets
    """

    label: str
    kind: Kind
    numbers: tuple[int, ...] = ()
    folios: tuple[int, ...] = ()
    part: Part | None = None
    role: Role | None = None
    rest: str = ""
    aside: bool = False


BARE = Mark(label="", kind=Kind.BARE)


def mark_in(line: str, *, heading: bool = False) -> Mark | None:
    """The page mark that a line is or starts with; a heading that starts with one is all mark."""
    line = line.lstrip(_ORNAMENT).rstrip()
    if line[:1] and line[0] in _OPEN:
        return _bracketed(line)
    found = _MARK.match(line)
    return _numbered(line, found, heading=heading) if found else None


def matter_mark(line: str) -> Mark | None:
    """The mark that a line such as "Title page" or "[Endpapers]" is; it must be the whole line."""
    label = line.strip(_ORNAMENT + _OPEN + _CLOSE + ":.")
    role = matter_named(label)
    return Mark(label=label, kind=Kind.MATTER, role=role) if role else None


def matter_named(words: str) -> Role | None:
    """The role of the page that some words name, such as "copyright page"; of several, the first's."""
    roles = [
        next((role for pattern, role in _MATTER if pattern.fullmatch(part.strip())), None)
        for part in _LIST.split(words.strip())
    ]
    return roles[0] if all(roles) else None


def number_mark(line: str) -> Mark | None:
    """A line that is nothing but a number or a range: "3", "4–5", "- 6 -". A mark or a folio."""
    bare = line.strip(_ORNAMENT).strip(_OPEN + _CLOSE)
    found = _NUMBER_ALONE.fullmatch(bare)
    if found is None or not found["first"].isdigit():
        return None
    numbers = _numbers(found)
    return Mark(label=bare.strip(" .):"), kind=Kind.NUMBER, numbers=numbers, folios=numbers)


def part_in(line: str) -> tuple[Part, str] | None:
    """The side of a spread that a line names ("Left:", "[Right page]"), and the text after it."""
    line = line.lstrip(_ORNAMENT).rstrip()
    if line[:1] and line[0] in "[(":
        inner, closing, rest = line[1:].partition(_CLOSE[_OPEN.index(line[0])])
        found = _SIDE_ALONE.fullmatch(inner.strip())
        if closing and found:
            return _part(found["side"]), rest.lstrip(" :.–—-")
        return None
    found = _SIDE_ALONE.match(line)
    if found is None or (found["end"] == "" and line[found.end() :].strip(_ORNAMENT)):
        return None
    return _part(found["side"]), _worded(line[found.end() :])


def _bracketed(line: str) -> Mark | None:
    """A mark in brackets, with text after them or a note inside them."""
    inner, closing, after = line[1:].partition(_CLOSE[_OPEN.index(line[0])])
    found = _MARK.match(inner.strip())
    mark = _numbered(inner.strip(), found, heading=False) if closing and found else None
    if mark is None:
        return None
    after = _worded(after.lstrip(_ORNAMENT + ":."))
    if mark.rest:
        return None if after else replace(mark, aside=True)
    return _with_rest(mark, after, whole=f"{mark.label} {after}")


def _numbered(line: str, found: re.Match[str], *, heading: bool) -> Mark | None:
    numbers, at = _numbers(found), found.end()
    # "Spread 4–5" names two pages, whatever it calls them.
    spread = bool(found["spread"]) and len(numbers) == 1
    folios = () if spread else numbers
    if spread and (too := _FOLIOS_TOO.match(line, at)):
        folios, at = _numbers(too), too.end()
    rest = _REST.match(line, at)
    if rest is None and matter_named(line[at:]):
        rest = _SPACE.match(line, at)
    if rest is None or 0 in numbers:
        return None
    mark = Mark(
        label=line[:at].strip(),
        kind=Kind.SPREAD if spread else Kind.PAGE,
        numbers=numbers,
        folios=folios,
        part=_part(found["side"]) if found["side"] else None,
    )
    after = _worded(line[rest.end() :])
    whole = line.rstrip(_ORNAMENT + ":.")
    if heading and after and matter_named(after.strip("()[]")) is None:
        return replace(mark, label=whole)
    return _with_rest(mark, after, whole=whole)


def _with_rest(mark: Mark, rest: str, *, whole: str) -> Mark:
    """The mark with what follows on its line: text, or words that say what the page is.

    ``whole`` is the label where the words belong to it.
    """
    named = rest.strip(" ()[].")
    if role := matter_named(named):
        return replace(mark, label=whole, role=role)
    return replace(mark, rest=rest, aside=bool(_WORDLESS.fullmatch(named)))


def _worded(rest: str) -> str:
    """What follows a mark on its line, or nothing if that is only ornament."""
    return rest.strip() if rest.strip(_ORNAMENT + ":.") else ""


def _numbers(found: re.Match[str]) -> tuple[int, ...]:
    words = [word.lower() for word in (found["first"], found["last"]) if word]
    numbers = tuple(_NUMBERS[word] if word in _NUMBERS else int(word) for word in words)
    between = (found["between"] or "").lower()
    if len(numbers) == 2 and between in _THROUGH and 1 < numbers[1] - numbers[0] < _LONGEST_RANGE:
        return tuple(range(numbers[0], numbers[1] + 1))
    return numbers


def _part(side: str) -> Part:
    return Part.LEFT if side.lower() in {"left", "verso", "lh"} else Part.RIGHT
