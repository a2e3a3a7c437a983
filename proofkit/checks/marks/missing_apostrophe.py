"""A shortened word without its apostrophe.

What it finds
    *dont*, *didnt*, *youre*, *thats* and their like, and *its'*. Short forms that are also words
    (*wont, cant, well, were, ill, lets*) are left to the eye.

Why a reader minds
    A child learns the word from the page.

Example
    I dont like peas.

Better
    I don't like peas.

When to let it stand
    In a note that a child in the story wrote.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterable

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings

NAME = "marks/missing-apostrophe"
NEEDS = frozenset({Need.TEXT})

_SHORT = (
    "don't didn't isn't wasn't couldn't wouldn't shouldn't doesn't haven't hasn't hadn't aren't weren't "
    "mustn't needn't you're they're you've they've we've I've I'm you'll they'll that's what's here's "
    "there's where's who's couldn't've could've would've should've"
)
_WRITTEN = {short.replace("'", ""): short for short in _SHORT.split()}
_WORD = re.compile(r"(?<![\w'’])[Ii]ts['’](?= [^\W\d_])|(?<![\w'’-])[^\W\d_]+(?![\w-]|['’]\w)")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield one issue for each word that lacks its apostrophe."""
    places: dict[str, list[Span]] = defaultdict(list)
    for page in book.pages:
        for match in _WORD.finditer(page.prose):
            if _better(match.group()):
                places[match.group()].append(page.span(*match.span()))
    apostrophe = "’" if any("’" in page.text for page in book.pages) else "'"
    for word, spans in places.items():
        yield issue_at(
            book,
            spans[0],
            check=NAME,
            tier=Tier.ERROR,
            message="its takes no apostrophe here"
            if word.lower().startswith("its")
            else "an apostrophe is missing",
            suggestions=[_better(word).replace("'", apostrophe)],
            confidence=0.9,
            related=spans[1:],
        )


def _better(word: str) -> str:
    """How the word should be written, or "" where it is right."""
    if word[:-1].lower() == "its" and not word[-1].isalpha():
        return word[:-1]
    short = _WRITTEN.get(word) or _WRITTEN.get(word.lower(), "")
    return short[:1].upper() + short[1:] if word[:1].isupper() else short
