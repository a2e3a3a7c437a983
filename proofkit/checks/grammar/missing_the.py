"""A phrase that hardly any writer leaves without its the.

What it finds
    "One of young men", "they wrote same song", "on other side", "all way home", "at edge of the
    wood": what such a phrase picks out is always a certain one. Dialect is left alone, and so are "all
    the same", "each other", "on top of" and "in front of".

Why a reader minds
    A small word is easily lost in typing, and never missed by the one who wrote it; the voice that reads
    aloud stumbles.

Example
    One of snails sneezed.

Better
    One of the snails sneezed.

When to let it stand
    In a note, a telegram, a poem.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from proofkit.analysis import Analysis, Token
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.grammar._voices import tier_at
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.lists import word_set

NAME = "grammar/missing-the"
NEEDS = frozenset({Need.LANGUAGE_MODEL})

_PICKED = word_set("one each two three four several")
_COUNTING = word_set(
    "many several few various two three four five six such different other more most all"
)
_LEADS = frozenset("IN TO VB VBD VBZ VBP VBG".split())
_NOUNS = frozenset({"NN", "NNS"})
_SIDES = word_set("side end hand way")
_PARTS = word_set("rest middle edge beginning bottom")
_OWNERS = frozenset({"DT", "PRP$"})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue for each such phrase; a query where somebody speaks."""
    for page in book.pages:
        tokens = analysis.page(page.number).tokens
        for at in range(1, len(tokens) - 1):
            tier = (
                tier_at(book, analysis, page, tokens[at].start) if _wants_the(tokens, at) else None
            )
            if tier:
                yield issue_at(
                    book,
                    page.span(tokens[at].start, tokens[at].end),
                    check=NAME,
                    tier=tier,
                    message="a “the” seems to be missing",
                    confidence=0.75 if tier is Tier.ERROR else 0.55,
                    suggestions=[f"the {tokens[at].text}"],
                )


def _wants_the(tokens: Sequence[Token], at: int) -> bool:
    before, word, after = tokens[at - 1], tokens[at].text, tokens[at + 1]
    if not word.islower() or after.start != tokens[at].end + 1:
        return False
    if before.text == "of" and at > 1 and tokens[at - 2].text.lower() in _PICKED:
        return _several(tokens, at)
    owned = after.text == "of" and at + 2 < len(tokens) and tokens[at + 2].tag in _OWNERS
    return (
        (word == "same" and before.tag in _LEADS and after.tag in _NOUNS)
        or (word == "other" and before.tag == "IN" and after.text in _SIDES)
        or (word == "way" and before.text == "all" and after.tag in ("RB", "TO", "IN", "."))
        or (word in _PARTS and owned and before.tag in _LEADS and before.text != "on")
    )


def _several(tokens: Sequence[Token], at: int) -> bool:
    """Whether a noun for many, and nothing that picks or counts, follows: *one of young men*."""
    place = at
    while place < len(tokens) and tokens[place].tag in ("JJ", "JJR", "VBN"):
        if tokens[place].text in _COUNTING:
            return False
        place += 1
    after = tokens[place + 1].text if place + 1 < len(tokens) else "."
    return (
        place < len(tokens)
        and tokens[place].tag == "NNS"
        and after not in ("'", "’", "'s", "’s", "and", "or")
    )
