"""Every quotation mark of a book, with how well it would do as an opening mark, a closing one or none.

The neighbours of a mark say most: an opening mark has a space before it and a letter after it, a
closing one has a letter or a stop before it and a space after it. Where they say nothing, the shape
of a curly mark counts a little. A single mark may also be an apostrophe. All is said as a cost, so
that a reader of the whole row can look for the reading with the fewest slips.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from proofkit.book import Book, Page, Role, Span
from proofkit.words import nearby
from proofkit.words.lists import word_set

DOUBLE = '"“”„«»'
SINGLE = "'‘’"
_CLOSED_BY = {"“": "”", "‘": "’", "„": "“", "«": "»", "»": "«"}
# Two apostrophes are one mark, unless the second begins a word ('' 'Tis).
_TOKEN = re.compile(r"(?<!')''(?!'|(?:[Tt]is|[Tt]was|[Ee]m|[Cc]ause|[Bb]out)\b)|[\"“”„«»'‘’]")
_OPENING_BRACKETS = "([{"
_DASHES = "–—-"
_ENDINGS = ",.;:!?…)]}"
_TURNED = 1.2  # a curly mark that looks the other way
_APOSTROPHE_RATHER = 1.5  # a single mark before a letter that closes: an apostrophe is likelier
_CONTRARY = 2.0  # neighbours that say the opposite
_NEVER = 9.0

# Words that begin with an apostrophe.
_LEADING = word_set(
    "tis twas twere twill twould til till em cause bout round n neath gainst ere ave im er is ad "
    "appen ow urry ouse and un bye fraid nuff cos ello scuse tisn twasn ee"
)
# Words that lose their last letters to one: the rest end in -in' or in the s of many owners.
_TRAILING = word_set("o th wi an t ol tha fo mo lil yo ha d po e jes gi mus bes las nex han")


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """One mark. ``opening``, ``closing`` and ``neither`` are costs, 0 for a mark that is plainly so.

    ``first``  whether it is the first thing in its paragraph
    """

    span: Span
    text: str
    opening: float
    closing: float
    neither: float
    first: bool

    @property
    def double(self) -> bool:
        """Whether it is a double mark (two apostrophes count as one)."""
        return self.text in DOUBLE or self.text == "''"


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """One paragraph of story: its page and where it stands there, with its marks."""

    page: int
    start: int
    end: int
    marks: tuple[Mark, ...]


def closing_for(opening: str) -> str:
    """The mark that closes what ``opening`` has opened."""
    return _CLOSED_BY.get(opening, opening)


def blocks_of(book: Book) -> tuple[Block, ...]:
    """The paragraphs of the story, in order, each with the marks in it."""
    return tuple(
        Block(page=page.number, start=p.start, end=p.end, marks=tuple(_marks(page, p.start, p.end)))
        for page in book.pages
        for p in page.paragraphs
        if p.role is Role.STORY and page.prose[p.start : p.end].strip()
    )


def _marks(page: Page, start: int, end: int) -> Iterator[Mark]:
    prose = page.prose
    beginning = end - len(prose[start:end].lstrip())
    for match in _TOKEN.finditer(prose, start, end):
        before = nearby.before(prose, match.start(), start=start)
        after = nearby.after(prose, match.end(), end=end)
        text = match.group()
        apostrophe = _apostrophe_cost(text, before, after)
        if apostrophe == 0:
            continue
        opening, closing = _side_costs(before, after, text)
        yield Mark(
            span=page.span(match.start(), match.end()),
            text=text,
            opening=opening,
            closing=closing,
            neither=apostrophe,
            first=match.start() == beginning,
        )


def _side_costs(before: str, after: str, text: str) -> tuple[float, float]:
    """What it costs to read a mark as opening, and as closing."""
    left, right = before[-1:], after[:1]
    opening, closing = _by_neighbours(left, right)
    if not before.strip() and right.strip():
        opening, closing = 0.0, 3.0
    elif not after.strip() and left.strip():
        opening, closing = 3.0, 0.0
    if text in SINGLE and opening == 0.0:
        closing += _APOSTROPHE_RATHER
    if text in "“‘„":
        closing += _TURNED
    elif text in "”’":
        opening += _TURNED
    return opening, closing


def _by_neighbours(left: str, right: str) -> tuple[float, float]:
    gap_left = not left.strip() or left in _OPENING_BRACKETS
    gap_right = not right.strip() or right in _ENDINGS
    if left and left in _DASHES:
        return (2.5, 0.0) if gap_right else (0.2, 0.6)
    if gap_left:
        return _after_gap(right, gap_right=gap_right)
    if gap_right or right in _DASHES:
        return _CONTRARY, 0.0
    if left in DOUBLE + SINGLE or right in DOUBLE + SINGLE:
        return 0.2, 0.2
    return (0.2, 0.4) if left in ",:" else (0.4, 0.2)


def _after_gap(right: str, *, gap_right: bool) -> tuple[float, float]:
    if not gap_right or right == "…":
        return 0.0, _CONTRARY
    return (2.5, 0.5) if right.strip() else (0.5, 0.5)


def _apostrophe_cost(text: str, before: str, after: str) -> float:
    """What it costs to read a mark as no quotation mark: an apostrophe, an inch, a stray."""
    left, right = before[-1:], after[:1]
    if text in DOUBLE or text == "''":
        if left.isdigit():
            return 1.0
        return 3.2 if left.strip() or right.strip() or not before.strip() else 2.2
    if _surely_apostrophe(before, after):
        return 0.0
    if right.isalnum():
        return _leading_cost(text, before, after)
    return _trailing_cost(before) if left.isalpha() else 3.2


def _surely_apostrophe(before: str, after: str) -> bool:
    """Between two letters, around the n of rock 'n' roll, or before the s of an owner (J.B.'s)."""
    left, right = before[-1:], after[:1]
    if left.isalnum() and right.isalnum():
        return True
    if before[-2:].lower() in ("'n", "’n", "‘n") or after[:2].lower() in ("n'", "n’"):
        return True
    return left == "." and re.match(r"s\b", after) is not None


def _leading_cost(text: str, before: str, after: str) -> float:
    word = re.match(r"\w+", after)
    known = word is not None and (word.group().lower() in _LEADING or word.group().isdigit())
    if text == "’":
        return 0.1 if known else 0.6
    if known:
        return 0.3
    # After *said the fox,* a speech goes on in small letters.
    brought_in = before.rstrip()[-1:] in (",", ";", ":")
    return 3.0 if after[0].isupper() or brought_in else 1.2


def _trailing_cost(before: str) -> float:
    word = re.search(r"[^\W\d_]+$", before)
    last = word.group().lower() if word else ""
    if last in _TRAILING or last.endswith("in"):
        return 0.2
    return 0.4 if last.endswith(("s", "z", "x")) else 1.5
