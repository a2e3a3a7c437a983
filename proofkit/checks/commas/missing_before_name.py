"""No comma between what someone is and what he is called.

What it finds
    "They met an old hunter Bombo": someone who is new to the story, with "a" or "an", and straight
    after it a name. "The hunter Bombo" and "my friend Bombo" are left alone: there the name says which.

Why a reader minds
    The name is an aside: an old hunter, by the way called Bombo.

Example
    At the well she met a tall girl Zuri.

Better
    At the well she met a tall girl, Zuri.

When to let it stand
    When the two are one name or one thing: a baby Rex, a Mother Goose.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from proofkit.analysis import Analysis, Token
from proofkit.book import Book, Page
from proofkit.checks.check import Need
from proofkit.checks.commas._rows import Missing, rows
from proofkit.issue import Issue, Tier
from proofkit.settings import Settings
from proofkit.words.lists import word_set
from proofkit.words.vocabulary import Vocabulary

NAME = "commas/missing-before-name"
NEEDS = frozenset({Need.LANGUAGE_MODEL})

_PERSONS = word_set(
    """
    man woman boy girl king queen farmer hunter chief witch wizard giant princess prince blacksmith
    friend fisherman shepherd teacher doctor healer herdsman merchant servant neighbour
    neighbor stranger cousin uncle aunt brother sister hare lion jackal tortoise monkey elephant
    goat dog cat hen mouse fox rabbit tailor baker miller potter weaver carpenter widow lady
    """
)
_DESCRIBES = frozenset(("ADJ", "ADV", "NOUN"))
_LONGEST = 4


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue each."""
    places = (
        place
        for page in book.pages
        for place in _on_page(page, analysis.page(page.number).tokens, analysis.vocabulary)
    )
    yield from rows(book, NAME, places)


def _on_page(page: Page, tokens: Sequence[Token], vocabulary: Vocabulary) -> Iterator[Missing]:
    for at in range(1, len(tokens) - 1):
        name, noun = tokens[at], tokens[at - 1]
        if noun.text not in _PERSONS or page.prose[noun.end : name.start] not in (" ", "\n"):
            continue
        if not (
            name.text[:1].isupper() and vocabulary.is_name(name.text) and _is_new(tokens, at - 1)
        ):
            continue
        last = _end_of_name(tokens, at, vocabulary)
        aside = tokens[last + 1].text not in tuple(",.!?;:") if last + 1 < len(tokens) else False
        if aside and tokens[last + 1].tag == "POS":
            continue  # a girl Zuri's basket: no name in address
        yield Missing(
            span=page.span(noun.start, tokens[last].end),
            reading=f"{noun.text}, {page.text[name.start : tokens[last].end]}{',' if aside else ''}",
            message="a comma between what someone is and the name",
            tier=Tier.ERROR,
            confidence=0.7,
        )


def _is_new(tokens: Sequence[Token], at: int) -> bool:
    """Whether "a" or "an" stands before the noun, with nothing but describing words between."""
    for place in range(at - 1, max(-1, at - 1 - _LONGEST), -1):
        if tokens[place].text.lower() in ("a", "an"):
            return True
        if tokens[place].pos not in _DESCRIBES or tokens[place].text[0].isupper():
            return False
    return False


def _end_of_name(tokens: Sequence[Token], at: int, vocabulary: Vocabulary) -> int:
    last = at
    while (
        last + 1 < len(tokens)
        and tokens[last + 1].text[:1].isupper()
        and vocabulary.is_name(tokens[last + 1].text)
    ):
        last += 1
    return last
