"""A hill, river or street with a name, and no capital of its own.

What it finds
    "Alder hill", "Limpet river", "Crumb street": such a word right after its name, in lower case all
    through the book.
    Where the book has both, another check asks (consistency/word-beside-name).

Why a reader minds
    The word is part of the place's name: Alder Hill, Lake Limpet. On its own it is not: the hill.

Example
    They lived below Alder hill.

Better
    They lived below Alder Hill.

When to let it stand
    When the first word is an owner's or a people's name (the Tibbs hill), or your publisher writes
    rivers in lower case.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Page, Span
from proofkit.checks.check import Need
from proofkit.checks.consistency._refrain import one_by_one
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.place_words import ADDRESSES, LANDFORMS
from proofkit.words.vocabulary import Vocabulary

NAME = "consistency/place-name-capital"
NEEDS = frozenset({Need.TEXT})

_PLACE = re.compile(r"(?<![\w'’-])([A-Z][^\W\d_]+) (?=([A-Za-z]+)\b(?! [a-z]*(?:side|top|bank)\b))")
# Nationalities and days before a landform describe it: an English hill, a Monday.
_DESCRIBES = re.compile(r"(?:an|ish|ese|day|ic)$")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue each, or one for a place that is named all through the book."""
    for (name, _), spans in _places(book, analysis.vocabulary).items():
        feature = book.quote(spans[0]).capitalize()
        for first, *others in one_by_one(spans):
            yield issue_at(
                book,
                first,
                check=NAME,
                tier=Tier.QUERY,
                message=f"a capital where it is part of the name: {name} {feature}",
                suggestions=(feature,),
                confidence=0.65 if feature.lower() in LANDFORMS else 0.55,
                related=others,
            )


def _places(book: Book, vocabulary: Vocabulary) -> dict[tuple[str, str], list[Span]]:
    lower: dict[tuple[str, str], list[Span]] = defaultdict(list)
    both = set()
    for page in book.pages:
        for match in _PLACE.finditer(page.prose):
            key = (match[1], match[2].lower())
            if key[1] in LANDFORMS | ADDRESSES and _names_a_place(page, match, vocabulary):
                if match[2].islower():
                    lower[key].append(page.span(*match.span(2)))
                else:
                    both.add(key)
    return {key: spans for key, spans in lower.items() if key not in both}


def _names_a_place(page: Page, match: re.Match[str], vocabulary: Vocabulary) -> bool:
    return vocabulary.is_name(match[1]) and _DESCRIBES.search(match[1]) is None
