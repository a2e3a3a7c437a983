"""The word *however* in mid-sentence without its commas.

What it finds
    "However" in the middle of a sentence with a comma on one side only, or on none: "the hen however
    sat down". Where it means "no matter how" (however big, however you like) it is left alone.

Why a reader minds
    The word is an aside: the voice drops before it and rises after it. One comma is half a bracket.

Example
    The hen however, went on digging.

Better
    The hen, however, went on digging.

When to let it stand
    Where "however" means "in whatever way".
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from proofkit.analysis import Analysis, PageAnalysis, Token
from proofkit.book import Book, Page
from proofkit.checks.check import Need
from proofkit.checks.commas._rows import Missing, rows
from proofkit.issue import Issue, Tier
from proofkit.settings import Settings
from proofkit.words.lists import word_set

NAME = "commas/around-however"
NEEDS = frozenset({Need.LANGUAGE_MODEL})

_HOWEVER = re.compile(r"([\w’']+)(,?)(\s+)however(,?)(?=\s)(?:\s+([\w’']+))?")
_GOES_ON = frozenset(("VBD", "VBZ", "VBP", "MD", "IN", "TO"))
# "The king was however looked upon…"
_VERBS_REST = frozenset(("VBN", "VBG", "VB"))
_JOINING = word_set("and but or so yet for because that if when while as or than then nor")
_PRONOUNS = word_set("i you he she it we they")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue each."""
    places = (place for page in book.pages for place in _on_page(page, analysis.page(page.number)))
    yield from rows(book, NAME, places)


def _on_page(page: Page, own: PageAnalysis) -> Iterator[Missing]:
    at_start = {token.start: token for token in own.tokens}
    for match in _HOWEVER.finditer(page.prose):
        before, first, gap, second, after = match.groups()
        if (first and second) or before.lower() in _JOINING or "\n\n" in gap:
            continue
        next_token = at_start.get(match.start(5)) if after else None
        if second or _is_aside(at_start.get(match.start(1)), next_token):
            yield Missing(
                span=page.span(match.start(1), match.end(4)),
                reading=f"{before},{gap}however,",
                message="commas on both sides of however",
                tier=Tier.ERROR,
                confidence=0.85,
            )


def _is_aside(before: Token | None, after: Token | None) -> bool:
    """What goes on with the sentence: a verb, a preposition. "However big", "however you like" doesn't."""
    if after is None or after.text.lower() in _PRONOUNS:
        return False
    inside_verb = before is not None and before.pos == "AUX" and after.tag in _VERBS_REST
    return after.tag in _GOES_ON or inside_verb
