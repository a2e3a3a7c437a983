"""What speaks for a character, a place or a thing: titles, what it does, what stands before it."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from proofkit.analysis import Analysis, PageAnalysis
from proofkit.book import Book
from proofkit.habits.mentions import Mention
from proofkit.habits.tokens import token_at
from proofkit.words.lists import word_set
from proofkit.words.people import pronoun_of
from proofkit.words.place_words import FEATURES
from proofkit.words.reporting import SAYING
from proofkit.words.titles import KIN_NAMES, TITLES

_NO_PERSON = ("old", "little", "st", "lady")
_PLACES = FEATURES | {
    "isle",
    "kingdom",
    "land",
    "point",
    "cove",
    "brook",
    "cave",
    "palace",
    "terrace",
}
_AT_PLACE = word_set("in into at through across near around towards toward beyond over outside")


@dataclass(frozen=True, slots=True, kw_only=True)
class Evidence:
    """``person``: a title or a kin word is part of it; ``place``: a word for a place is.

    ``acts`` counts verbs that have it as their subject, ``speaks`` those of speech among them,
    ``at_place`` the times that "in", "through" and the like stand before it, ``with_article`` those
    that "the" or "a" does.
    """

    person: bool
    place: bool
    acts: int
    speaks: int
    at_place: int
    with_article: int


def evidence_of(book: Book, analysis: Analysis, mentions: Sequence[Mention]) -> Evidence:
    """All that the book tells of one name."""
    acts = speaks = at_place = with_article = 0
    for mention in mentions:
        own = analysis.page(mention.span.page)
        before, after = _around(book, mention)
        verb = _verb(own, mention)
        acts += verb is not None
        speaks += verb in SAYING or _speaks(before, after)
        at_place += before in _AT_PLACE
        with_article += _has_article(book, mention)
    return Evidence(
        person=any(_is_person(mention) for mention in mentions),
        place=any(_is_place(mention) for mention in mentions),
        acts=acts,
        speaks=speaks,
        at_place=at_place,
        with_article=with_article,
    )


def _is_person(mention: Mention) -> bool:
    first = mention.words[0].lower().strip(".")
    if len(mention.words) == 1:
        return first in KIN_NAMES or pronoun_of(first) is not None
    return first in TITLES and first not in _NO_PERSON


def _is_place(mention: Mention) -> bool:
    """Alder Hill, Valley of the Clowns."""
    first, *others = [word.lower() for word in mention.words]
    return bool(others) and (others[-1] in _PLACES or (others[0] == "of" and first in _PLACES))


def _around(book: Book, mention: Mention) -> tuple[str, str]:
    prose = book.page(mention.span.page).prose
    before = re.findall(
        r"[\w'’]+(?= (?:the |The )?$)", prose[max(0, mention.span.start - 30) : mention.span.start]
    )
    after = re.match(r" ([\w'’]+)", prose[mention.span.end : mention.span.end + 30])
    return (before[-1].lower() if before else "", after[1].lower() if after else "")


def _speaks(before: str, after: str) -> bool:
    """Said Tock; Tock said."""
    return before in SAYING or after in SAYING


def _verb(own: PageAnalysis, mention: Mention) -> str | None:
    """The verb that the name is the subject of, as written; being is no act."""
    at = token_at(own, mention.span.end)
    if at is None or own.tokens[at].dep not in ("nsubj", "nsubjpass"):
        return None
    head = own.tokens[own.tokens[at].head]
    return head.text.lower() if head.pos == "VERB" else None


def _has_article(book: Book, mention: Mention) -> bool:
    before = book.page(mention.span.page).prose[: mention.span.start]
    return re.search(r"\b(?:[Tt]he|[Aa]n?) $", before[-5:]) is not None
