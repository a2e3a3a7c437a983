"""Page labels written in more than one way.

What it finds
    A label such as "p. 6" or "PAGE 6" in a manuscript that otherwise has "Page 6"; a number in words
    among figures; "Pages 4-5" among "Pages 4–5". Labels for pages and for spreads are compared apart.
    All of them are one row.

Why a reader minds
    The designer searches for the labels; those written otherwise are not found.

Example
    Page 1, Page 2, p. 3, Page 4

Better
    Page 1, Page 2, Page 3, Page 4

When to let it stand
    Where the difference says something, as when a left and a right page are labelled apart.
"""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Page
from proofkit.checks.check import Need
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings

NAME = "consistency/label-two-ways"
NEEDS = frozenset({Need.TEXT})

_NUMBER = (
    r"\d+|(?:twenty|thirty|forty)(?:[- ]\w+)?|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve"
    r"|(?:thir|four|fif|six|seven|eigh|nine)teen"
)
_LABEL = re.compile(
    rf"(?P<word>pages?|pgs?\b\.?|pp?\b\.?|spreads?|double[- ]pages?)(?P<space>\s*)(?P<number>{_NUMBER})"
    r"(?:(?P<between>\s*(?:[-–—/&]|and|to)\s*)\d+)?",
    re.IGNORECASE,
)
_FEWEST = 3  # labels that agree
_MOSTLY = 2  # times as many


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """At most one issue, on the first label that is shaped otherwise than most of its kind."""
    shapes: defaultdict[tuple[str, str], list[tuple[tuple[str, ...], Page]]] = defaultdict(list)
    for page in book.pages:
        for part, kind, shape in _shapes(page.label):
            shapes[part, kind].append((shape, page))
    odd: dict[Page, Page] = {}
    count = 0
    for labels in shapes.values():
        usual, times = Counter(shape for shape, _ in labels).most_common(1)[0]
        others = [page for shape, page in labels if shape != usual]
        if others and times >= max(_FEWEST, _MOSTLY * len(others)):
            model = next(page for shape, page in labels if shape == usual)
            odd |= dict.fromkeys(others, model)
            count = count or times
    if odd:
        yield _issue(book, odd, count)


def _issue(book: Book, odd: dict[Page, Page], times: int) -> Issue:
    first, *others = sorted(odd, key=lambda page: page.number)
    return issue_at(
        book,
        first.span(0, 0),
        check=NAME,
        tier=Tier.QUERY,
        message=f"the label is “{first.label}”; elsewhere as in “{odd[first].label}” ({times} times)",
        confidence=0.8,
        related=[page.span(0, 0) for page in others],
    )


def _shapes(label: str) -> Iterator[tuple[str, str, tuple[str, ...]]]:
    """How a label is written: its word and number, and what stands between two numbers."""
    match = _LABEL.match(label)
    if match is None:
        return
    word, number = match["word"], match["number"]
    kind = "page" if word[0].lower() == "p" else "spread"
    case = "upper" if word.isupper() and len(word) > 2 else word[0]
    short = "" if len(word.rstrip(".s")) > 2 else word.lower().replace("pp", "p")
    figures = "figures" if number.isdigit() else "words"
    yield "word", kind, (case, short, figures, "space" if match["space"] else "")
    if match["between"]:
        yield "between", kind, (match["between"],)
