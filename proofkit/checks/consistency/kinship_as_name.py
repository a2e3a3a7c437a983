"""A kinship word that stands for a name, without its capital.

What it finds
    "mother", "dad", "grandma" and the like without any article, owner or adjective before them,
    where they do a name's work: "she asked grandmother", "then mum laughed".

Why a reader minds
    Used like a name it is spelt like one: Mum, Grandmother. With an owner it is a common noun: my
    mum, her grandmother.

Example
    In the evening grandmother lit the lamp.

Better
    In the evening Grandmother lit the lamp.

When to let it stand
    In set pairs and general truths (mother and child; like father, like son), and where the
    publisher's house style leaves such names in lower case all through: then it is one row for the book,
    and none if the style sheet has the word so.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from proofkit.analysis import Analysis, PageAnalysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.checks.consistency._noun_phrase import Edge, joined_before, left_edge
from proofkit.checks.consistency._refrain import by_surroundings
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.lists import word_set
from proofkit.words.vocabulary import opens_sentence

NAME = "consistency/kinship-as-name"
NEEDS = frozenset({Need.LANGUAGE_MODEL})

KIN = word_set(
    """
    mother father mum mom mummy mommy mama mamma dad daddy papa grandmother grandfather
    grandma grandpa granny gran grandad granddad nana nanna auntie aunty
    """
)
# "He became father to them all", "as mother", "turned father": what someone is, not who.
_BEFORE_A_ROLE = word_set(
    """
    as of than like become became be been being turned playing play
    """
)
_NOT_WHO = word_set("be is was were are am been being 's not n't n’t")
# "father of twins", "mother to the king"
_AFTER_A_ROLE = frozenset({"of"})
_KEEP = word_set("keep keeps kept keeping stay stays stayed stand stood remain remained")
_FINITE = ("VBD", "VBZ", "MD")
_A_HABIT = 4
_SELDOM = 3
_VERB_OBJECTS = word_set(
    """
    the a an him her them it me us you this that his their my
    """
)


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue each; where a book has such words so again and again, one for all.

    A book that hardly ever gives such names their capital has a house style: one query for all its words.
    """
    places = _places(book, analysis, settings)
    spans = sorted(places)
    if len(spans) > _A_HABIT and _SELDOM * _capitals(book, places) <= len(spans):
        yield _habit(book, spans)
        return
    for first, *others in [spans] if len(spans) > _A_HABIT else by_surroundings(book, spans):
        yield _issue(book, first, others, spoken_to=places[first])


def _places(book: Book, analysis: Analysis, settings: Settings) -> dict[Span, bool]:
    """Where such a word does a name's work in lower case, and whether somebody is spoken to there."""
    address: dict[Span, bool] = {}
    for page in book.pages:
        own = analysis.page(page.number)
        for at, token in enumerate(own.tokens):
            if token.text in KIN and token.text not in settings.style.words and _is_a_name(own, at):
                address[page.span(token.start, token.end)] = _is_address(own, at)
    return address


def _capitals(book: Book, places: Iterable[Span]) -> int:
    """How often one of the words has its capital inside a sentence, where no name follows it."""
    words = "|".join(sorted({book.quote(span).capitalize() for span in places}))
    alone = re.compile(rf"(?<![\w'’-])(?:{words})(?![\w-])(?! [A-Z])")
    return sum(
        not opens_sentence(page.prose, match.start())
        for page in book.pages
        for match in alone.finditer(page.prose)
    )


def _habit(book: Book, spans: list[Span]) -> Issue:
    first, *others = spans
    word = book.quote(first)
    return issue_at(
        book,
        first,
        check=NAME,
        tier=Tier.QUERY,
        message=f"used as a name, {word} and the like mostly have no capital here ({len(spans)} times)",
        suggestions=(word.capitalize(),),
        confidence=0.45,
        related=others,
    )


def _issue(book: Book, span: Span, others: list[Span], *, spoken_to: bool) -> Issue:
    word = book.quote(span).capitalize()
    alone = all(book.quote(other) == book.quote(span) for other in others)
    names = f"{word} is used as a name" if alone else f"{word} and the like are used as names"
    return issue_at(
        book,
        span,
        check=NAME,
        tier=Tier.QUERY if spoken_to else Tier.ERROR,
        message=f"a capital where {names}",
        suggestions=(word,),
        confidence=0.7 if spoken_to else 0.8,
        related=others,
    )


def _is_a_name(page: PageAnalysis, at: int) -> bool:
    tokens = page.tokens
    if left_edge(page, at) is not Edge.BARE or _is_a_role(page, at) or _is_a_verb(page, at):
        return False
    if (
        at + 1 < len(tokens)
        and tokens[at + 1].pos in ("NOUN", "PROPN", "ADJ")
        and _joined(page, at)
    ):
        return False
    return not _is_listed(page, at) and not _starts_a_pair(page, at)


def _is_listed(page: PageAnalysis, at: int) -> bool:
    """Her sister and mother; not "on my birthday, mum sang", where the comma ends the opening words."""
    tokens = page.tokens
    before = joined_before(page, at)
    if before is None:
        return False
    if tokens[at - 1].text == ",":
        after = tokens[at + 1] if at + 1 < len(tokens) else None
        return after is None or after.tag not in _FINITE
    return tokens[before].text[:1].islower()


def _is_a_role(page: PageAnalysis, at: int) -> bool:
    tokens = page.tokens
    before = tokens[at - 1].text.lower() if at else ""
    after = tokens[at + 1].text.lower() if at + 1 < len(tokens) else ""
    return (
        before in _BEFORE_A_ROLE
        or before in _NOT_WHO
        or after in _AFTER_A_ROLE
        or after == "-"
        or before == "-"
    )


def _is_a_verb(page: PageAnalysis, at: int) -> bool:
    """To mother the kittens, to keep mum: no noun, or not this one."""
    tokens = page.tokens
    before = tokens[at - 1].text.lower() if at else ""
    after = tokens[at + 1].text.lower() if at + 1 < len(tokens) else ""
    if tokens[at].text == "mum" and (before in _KEEP or "word" in _words_after(page, at)):
        return True
    return before in ("to", "will", "would", "not") and after in _VERB_OBJECTS


def _words_after(page: PageAnalysis, at: int) -> list[str]:
    return [token.text.lower() for token in page.tokens[at + 1 : at + 4]]


def _joined(page: PageAnalysis, at: int) -> bool:
    """Mother hen, father bear: no mark stands between."""
    return page.tokens[at + 1].start - page.tokens[at].end <= 1


def _starts_a_pair(page: PageAnalysis, at: int) -> bool:
    """Mother and child, father or son."""
    tokens = page.tokens
    return (
        at + 2 < len(tokens)
        and tokens[at + 1].text.lower() in ("and", "or", "nor", "&")
        and tokens[at + 2].pos == "NOUN"
        and tokens[at + 2].text.islower()
    )


def _is_address(page: PageAnalysis, at: int) -> bool:
    """Spoken to: marks on both sides, or before it and at the end."""
    tokens = page.tokens
    before = at > 0 and tokens[at - 1].text == ","
    after = at + 1 < len(tokens) and tokens[at + 1].text in tuple(",.!?")
    return before and after
