"""A kinship word with a capital after my, her, Goose's.

What it finds
    "my Mum", "his Uncle": with an owner before it the word is a common noun, and takes no capital
    inside a sentence. "My Uncle Bo" is left alone: there it is a title.

Why a reader minds
    It is the commonest mistake with family words, and teachers correct it in children's own writing.

Example
    He ran to his Mum.

Better
    He ran to his mum.

When to let it stand
    When the owner and the word are a name together (Our Father), or when it is one of the book's
    own names.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings

NAME = "consistency/kinship-with-owner"
NEEDS = frozenset({Need.TEXT})

# "Where's Grandma?" is where is Grandma: these own nothing.
_IS = r"(?:Where|Who|What|Here|There|That|This|How|When|Why|It|He|She)\b"
_OWNED = re.compile(
    rf"\b(?:my|his|her|your|their|our|[Mm]y|His|Her|Your|Their|Our|(?!{_IS})[A-Z]\w+['’]s)(?: (?:own|dear|old|poor))?"
    r" (Mother|Father|Mum|Mom|Mummy|Mommy|Mama|Dad|Daddy|Papa|Grandmother|Grandfather|Grandma|"
    r"Grandpa|Granny|Gran|Grandad|Uncle|Aunt|Auntie|Brother|Sister|Cousin)\b(?! [A-Z])(?!-)"
)
_PRAYER = re.compile(r"^Our Father$")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue for each word."""
    places: dict[str, list[Span]] = defaultdict(list)
    for page in book.pages:
        for match in _OWNED.finditer(page.prose):
            if not _PRAYER.match(match[0]):
                places[match[1]].append(page.span(*match.span(1)))
    for word, (first, *others) in places.items():
        owner = book.page(first.page).prose[: first.start].split()[-1].lower()
        yield issue_at(
            book,
            first,
            check=NAME,
            tier=Tier.QUERY,
            message=f"no capital after {owner}: there {word.lower()} is not a name",
            suggestions=(word.lower(),),
            confidence=0.65,
            related=others,
        )
