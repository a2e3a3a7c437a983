"""No comma between a reporting verb and what the speaker did meanwhile.

What it finds
    "said the fox smiling", "he asked looking up": a verb of saying, its subject, and straight after
    it what the speaker was doing.

Why a reader minds
    Without the comma the smile belongs to the fox that is meant; with it, to the saying.

Example
    "Good morning," said the fox smiling.

Better
    "Good morning," said the fox, smiling.

When to let it stand
    Where the words tell which one spoke: said the girl standing nearest.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.commas._rows import Missing, rows
from proofkit.issue import Issue, Tier
from proofkit.settings import Settings
from proofkit.words.lists import word_set

NAME = "commas/before-participle"
NEEDS = frozenset({Need.TEXT})

_VERB = (
    r"(?:said|asked|replied|cried|answered|whispered|shouted|called|exclaimed|sighed|laughed|yelled|muttered|added|begged"
    r"|roared|growled|squeaked|wailed|sobbed|screamed|murmured|announced)"
)
_WHO = r"(?:he|she|it|they|I|we|(?:the|his|her|my|their|a|an) (?:\w+ )?\w+|(?:Mr|Mrs|Miss|Ms|Dr)\.? [A-Z]\w+|[A-Z]\w+(?: [A-Z]\w+)?)"
_SAID = re.compile(
    rf"[”\"’'] ((?:{_VERB}(?: {_WHO})?|{_WHO} {_VERB}) (\w+ing))\b(?! (?:and|or|of)\b)"
)
# Things and times that end in -ing, and what may follow a verb of saying as its own object.
_NO_DEED = word_set(
    """
    morning evening thing nothing something everything anything king string ring spring wing
    during being sing bring sling ding ping duckling darling starling herring pudding wedding
    building ceiling gosling
    """
)


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one query each."""
    yield from rows(book, NAME, _places(book))


def _places(book: Book) -> Iterator[Missing]:
    for page in book.pages:
        for match in _SAID.finditer(page.prose):
            doing = match[2]
            words = match[1].split()[:-1]
            if doing in _NO_DEED or doing[0].isupper() or words[-1] in ("the", "a", "his", "her"):
                continue
            start = match.end(1) - len(doing) - len(words[-1]) - 1
            yield Missing(
                span=page.span(start, match.end(1)),
                reading=f"{words[-1]}, {doing}",
                message="a comma before what the speaker was doing",
                tier=Tier.QUERY,
                confidence=0.7,
            )
