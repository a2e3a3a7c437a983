"""A noun for one after a number for many.

What it finds
    "two dog ran", "she saw five egg", "three little pig": a number from two up, and a noun that
    should have its plural. Animals and measures that English counts without one (three sheep, ten
    foot) are left alone, and so is a number before a noun that describes another (two dog bowls).

Why a reader minds
    The picture shows how many there are, and a child who counts will say so.

Example
    Two dog ran along the beach.

Better
    Two dogs ran along the beach.

When to let it stand
    In a small child's talk.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from proofkit.analysis import Analysis, Token
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.dictionary import dictionary
from proofkit.words.quotations import quotations_of

NAME = "grammar/counted-noun"
NEEDS = frozenset({Need.LANGUAGE_MODEL})

_NUMBERS_WORDS = """
two three four five six seven eight nine ten eleven twelve twenty thirty forty fifty several
"""
_NUMBERS = frozenset(_NUMBERS_WORDS.split())
_UNCHANGED_WORDS = """
sheep fish deer moose elk trout salmon cod shrimp squid swine bison grouse plankton buffalo
reindeer antelope foot pound stone dozen score hundred thousand million head pair brace yoke
gross mile fathom ton tonne aircraft spacecraft hovercraft craft offspring series species
crossroads means kilo euro yen rand quid one times o'clock p.m. a.m. people police cattle
folk kin game more less other many people's
"""
_UNCHANGED = frozenset(_UNCHANGED_WORDS.split())
_IRREGULAR = {
    "child": "children", "mouse": "mice", "man": "men", "woman": "women", "tooth": "teeth", "goose": "geese",
    "ox": "oxen", "louse": "lice", "person": "people", "wolf": "wolves", "leaf": "leaves", "loaf": "loaves",
    "knife": "knives", "wife": "wives", "life": "lives", "half": "halves", "calf": "calves", "elf": "elves",
    "shelf": "shelves", "thief": "thieves", "scarf": "scarves", "potato": "potatoes", "tomato": "tomatoes",
    "hero": "heroes", "echo": "echoes", "mango": "mangoes", "cactus": "cacti", "fairy": "fairies",
}  # fmt: skip
# After these the noun may only be describing what follows: "two dog bowls", "three year old".
_GOES_ON = frozenset({"NOUN", "PROPN", "ADJ", "NUM", "CCONJ"})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue for each noun for one after a number; nothing where somebody speaks."""
    quotations = None
    for page in book.pages:
        tokens = analysis.page(page.number).tokens
        for at in range(1, len(tokens)):
            plural = _wanted(tokens, at, analysis)
            if plural is None:
                continue
            quotations = quotations or quotations_of(book)
            if not quotations.speaks(page.number, tokens[at].start):
                yield issue_at(
                    book,
                    page.span(tokens[at].start, tokens[at].end),
                    check=NAME,
                    tier=Tier.ERROR,
                    message="more than one, so the noun needs its plural",
                    confidence=0.7,
                    suggestions=[plural],
                )


def _wanted(tokens: Sequence[Token], at: int, analysis: Analysis) -> str | None:
    """The plural that token ``at`` should have, or None if it is right or there is any doubt."""
    noun = tokens[at]
    if noun.tag != "NN" or not noun.text.islower() or noun.text in _UNCHANGED:
        return None
    number = at - 2 if tokens[at - 1].pos == "ADJ" and at > 1 else at - 1
    if tokens[number].text.lower() not in _NUMBERS or not _touch(tokens[number : at + 1]):
        return None
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    if after is not None and (
        after.pos in _GOES_ON or after.text in ("-", "‑", "/", "'", "’", "'s", "’s")
    ):
        return None
    if number > 0 and (
        tokens[number - 1].tag == "CD"
        or tokens[number - 1].text.lower() in ("and", "page", "-", "–")
    ):
        return None
    plural = plural_of(noun.text)
    words = dictionary(analysis.english)
    return plural if words.knows(noun.text) and words.knows(plural) else None


def plural_of(noun: str) -> str:
    """The plural of an ordinary English noun."""
    if noun in _IRREGULAR:
        return _IRREGULAR[noun]
    if noun.endswith(("s", "x", "z", "ch", "sh")):
        return noun + "es"
    if noun.endswith("y") and noun[-2:-1] not in "aeiou":
        return noun[:-1] + "ies"
    return noun + "s"


def _touch(tokens: Sequence[Token]) -> bool:
    return all(left.end + 1 == right.start for left, right in pairwise(tokens))
