"""A word that sounds like the right one, or differs from it by a slip of a letter.

What it finds
    "went threw the gate", "the wind blue", "a peace of cake", "jumped form the roof", "wagged his
    tale": real words, but not the ones that can stand there. A list of our own, kept to places where
    the words around leave no doubt.

Why a reader minds
    The spelling checker in a word processor lets it pass, and the printer prints it.

Example
    The cat crept threw the hole.

Better
    The cat crept through the hole.

When to let it stand
    In a pun, and in a note that a child in the story wrote.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Page, Span
from proofkit.checks.check import Need
from proofkit.checks.grammar._sound_alikes import SoundAlike, sound_alikes
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings

NAME = "grammar/sound-alike"
NEEDS = frozenset({Need.TEXT})

_Found = tuple[Span, str]


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue for each word put for another, the same slip on many pages as one."""
    alike: dict[tuple[str, str], list[_Found]] = defaultdict(list)
    rows = [row for row in sound_alikes() if _met(row, analysis)]
    for page in book.pages:
        prose = page.prose
        for row in rows:
            for match in row.pattern.finditer(prose):
                if not _is_name(page, analysis, match.span(1)):
                    found = page.span(*match.span(1)), _written(row.meant, match.group(1))
                    alike[row.meant, match.group(1).lower()].append(found)
    for places in alike.values():
        (first, reading), *others = places
        yield issue_at(
            book,
            first,
            check=NAME,
            tier=Tier.ERROR,
            message=f"“{reading}” seems to be meant",
            confidence=0.85,
            suggestions=[reading],
            related=[span for span, _ in others],
        )


def _met(row: SoundAlike, analysis: Analysis) -> bool:
    """Whether the book has one of the words at fault at all; most rows need no further look."""
    first = (fault.split()[0].removesuffix("'s") for fault in row.faults)
    return any(
        analysis.vocabulary.count(word) or analysis.vocabulary.count(word.replace("'", "’"))
        for word in first
    )


def _is_name(page: Page, analysis: Analysis, at: tuple[int, int]) -> bool:
    word = page.text[slice(*at)]
    return word[0].isupper() and analysis.vocabulary.is_name(word)


def _written(meant: str, fault: str) -> str:
    curly = meant.replace("'", "’") if "’" in fault else meant
    return curly[0].upper() + curly[1:] if fault[0].isupper() else curly
