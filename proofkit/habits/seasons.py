"""Capitals for the seasons, and for the sun, the moon and the earth.

English writes seasons in lower case (New Hart's Rules; The Chicago Manual of Style), and sun, moon and
earth too outside astronomy; a story may give any of them a capital and make a person of it, but then all
through.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from proofkit.book import Book, Span
from proofkit.habits._places import usage_of
from proofkit.habits.usage import Usage
from proofkit.words.lists import word_set
from proofkit.words.vocabulary import opens_sentence

CAPITAL, LOWER = "a capital", "lower case"

_SEASON = re.compile(
    r"(?<![\w'’-])(?:[Ss]ummer|[Aa]utumn|[Ww]inter|(?<=[a-z] )[Ss]pring)(?![\w-])(?! [A-Z])(?!['’]s [A-Z])"
)
# "The", and no other word, stands before the one sun and the one moon; "on earth" is a phrase of its own.
_HEAVENLY = re.compile(
    r"(?<=\b[Tt]he )(?P<word>[Ss]un|[Mm]oon|[Ee]arth)(?![\w-])(?! [A-Z])(?!['’]s [A-Z])"
)
# The season, and neither the jump nor the well.
_SPRING = re.compile(
    r"\b(?:in|this|last|next|every|each|all|early|late|until|till|since|when|of|by|that|once|and|or"
    r"|in the|that|through the|during the|of the|for|after|before|through|it was|it is|it['’]s) $",
    re.IGNORECASE,
)
_BEFORE_A_SEASON = word_set(
    "in this last next every each all early late until till since when by that once during the after "
    "before through one it is was as for like and but then"
)
_WORD_BEFORE = re.compile(r"(?<![\w'’])([\w'’]+) $")
_BEFORE = 16  # characters


def usages(book: Book) -> tuple[Usage, ...]:
    """For the seasons together, and for sun, moon and earth each, where they have a capital and where none.

    Sentence beginnings tell nothing and are left out; so is what is part of a longer name.
    """
    found: dict[str, list[tuple[str, Span]]] = {}
    for page in book.pages:
        for match, matter in _matches(page.prose):
            form = CAPITAL if match[0][0].isupper() else LOWER
            found.setdefault(matter, []).append((form, page.span(*match.span())))
    return tuple(usage_of(matter, places) for matter, places in found.items())


def _matches(prose: str) -> Iterator[tuple[re.Match[str], str]]:
    for match in _SEASON.finditer(prose):
        before = prose[max(0, match.start() - _BEFORE) : match.start()]
        if opens_sentence(prose, match.start()) or _follows_a_name(prose, match.start()):
            continue
        if match[0].lower() != "spring" or _SPRING.search(before):
            yield match, "seasons"
    for match in _HEAVENLY.finditer(prose):
        yield match, f"the {match[0].lower()}"


def _follows_a_name(prose: str, at: int) -> bool:
    """Old Winter; not "In winter", where the sentence asks for the capital."""
    word = _WORD_BEFORE.search(prose, max(0, at - _BEFORE), at)
    return word is not None and word[1][0].isupper() and word[1].lower() not in _BEFORE_A_SEASON
