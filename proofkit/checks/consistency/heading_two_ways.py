"""Chapter headings set in more than one way.

What it finds
    A chapter heading that is not written as the others are: "Chapter 3" among "Chapter One", "CHAPTER
    FOUR", a stop at its end; or one with another style in the Word file. All of them are one row.

Why a reader minds
    A heading in another dress looks like another kind of part.

Example
    Chapter One, Chapter Two, Chapter 3

Better
    Chapter One, Chapter Two, Chapter Three

When to let it stand
    Where a part of the book is meant to stand out.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Page, Paragraph, Role, Span
from proofkit.checks.check import Need
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings

NAME = "consistency/heading-two-ways"
NEEDS = frozenset({Need.TEXT})

_CHAPTER = re.compile(
    r"(?P<word>chapter)\s+(?P<number>\d+|[ivxlc]+\b|[a-z]+(?:[- ][a-z]+)?)(?P<rest>.*)",
    re.IGNORECASE | re.DOTALL,
)
_ROMAN = re.compile(r"[ivxlc]+", re.IGNORECASE)
_FEWEST = 2  # headings that agree
_MOSTLY = 2  # times as many


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """At most one issue, on the first heading unlike most others."""
    headings = [
        (page.span(p.start, p.end), shape)
        for page in book.pages
        for p in page.paragraphs
        if p.role in (Role.TITLE, Role.STORY) and (shape := _shape(page, p))
    ]
    if not headings:
        return
    usual, times = Counter(shape for _, shape in headings).most_common(1)[0]
    odd = [(span, shape) for span, shape in headings if shape != usual]
    if odd and times >= max(_FEWEST, _MOSTLY * len(odd)):
        yield _issue(book, odd, usual, times)


def _issue(
    book: Book, odd: list[tuple[Span, tuple[str, ...]]], usual: tuple[str, ...], times: int
) -> Issue:
    (first, shape), *others = odd
    what = next(
        name for name, own, other in zip(_FEATURES, shape, usual, strict=True) if own != other
    )
    return issue_at(
        book,
        first,
        check=NAME,
        tier=Tier.QUERY,
        message=f"another {what} than the other chapter headings ({times})",
        confidence=0.7,
        related=[span for span, _ in others],
    )


_FEATURES = ("use of capitals", "kind of number", "ending", "style")


def _shape(page: Page, paragraph: Paragraph) -> tuple[str, ...] | None:
    """How a heading is written; None for any other paragraph."""
    text = page.text[paragraph.start : paragraph.end]
    match = _CHAPTER.fullmatch(text)
    if match is None or len(text) > 80:
        return None
    number = match["number"]
    kind = "figures" if number.isdigit() else "roman" if _ROMAN.fullmatch(number) else "words"
    case = "upper" if match["word"].isupper() else match["word"][0]
    end = match["rest"].rstrip()[-1:] if match["rest"].rstrip()[-1:] in ".:" else ""
    return case, kind, end, paragraph.style
