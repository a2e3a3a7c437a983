"""No comma between a name and the "who" that tells more about it.

What it finds
    "Pip who was hungry ran in": a name, or a mother, father or the like that someone has only one of,
    with "who", "whose" or "which" straight after it. Where the clause ends inside the sentence, the
    second comma is shown too.

Why a reader minds
    "The boy who sang" says which boy. A name has said so already: what follows is an aside, and stands
    between commas.

Example
    They gave the crown to Pip who hid it at once.

Better
    They gave the crown to Pip, who hid it at once.

When to let it stand
    When there are two of the name and the clause says which, and after "it was" (it was Pip who hid
    it).
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from proofkit.analysis import Analysis, Token
from proofkit.book import Book, Page
from proofkit.checks.check import Need
from proofkit.checks.commas._rows import Missing, rows
from proofkit.issue import Issue, Tier
from proofkit.settings import Settings
from proofkit.words.lists import word_set
from proofkit.words.vocabulary import Vocabulary

NAME = "commas/missing-before-who"
NEEDS = frozenset({Need.LANGUAGE_MODEL})

_RELATIVES = word_set("who whose whom which")
_TITLES = word_set(
    "Mr Mrs Ms Dr Miss Mister Uncle Aunt Auntie King Queen Prince Princess Old Little St"
)
_ONE_OF_EACH = word_set(
    """
    mother father mum mom mummy mommy dad daddy papa mama grandmother grandfather grandma grandpa
    granny wife husband
    """
)
_OWNERS = word_set("my your his her its our their")
_ELDEST = word_set("eldest oldest youngest")
# "The Pip who…" says which; "ask Pip who…" asks; "only Pip who…" picks out.
_KEEPS_TOGETHER = word_set(
    """
    the a an this that another which any every no some only not just like
    all whole same ask asked asking asks tell told telling tells show showed know knew wonder wondered guess
    remember remind reminded teach taught see saw than and or n't n’t
    """
)
_PLACE_BEFORE = word_set("of in from at near on across throughout")
_MARKS = tuple(",.!?;:\"'“”‘’")
_CLEFT = re.compile(
    r"(?:\b(?:it|this|that|he|she|who|there)(?:['’]s|['’]d| (?:is|was|were|must be|might be|would be|will be|had been|has been|may be|could be))"
    r"|\b(?:is|was) (?:it|that|this)|['’]twas)(?: (?:not|only|always|really|just|also|still|then|all|probably|surely|certainly))*"
    r"(?: (?:poor|old|little|dear|big|clever|brave|silly))*\s*$",
    re.IGNORECASE,
)
_FINITE = frozenset(("VBD", "VBZ", "VBP", "MD"))
_AFTER_WHO = frozenset(("VERB", "AUX", "PRON", "ADV", "DET", "NOUN", "ADJ", "PART", "PROPN"))


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
        who, before = tokens[at], tokens[at - 1]
        if who.text not in _RELATIVES or not _follows(page, before, who):
            continue
        if tokens[at + 1].pos not in _AFTER_WHO:
            continue
        start = _antecedent(page, tokens, at, vocabulary)
        if start is None:
            continue
        end, reading = _reading(page, tokens, at)
        own = tokens[at - 1] if tokens[at - 1].tag != "POS" else tokens[at - 2]
        yield Missing(
            span=page.span(own.start, end),
            reading=page.text[own.start : before.end] + "," + reading,
            message=f"a comma before {who.text}: what follows is an aside",
            tier=Tier.ERROR,
            confidence=0.75,
        )


def _follows(page: Page, before: Token, who: Token) -> bool:
    return page.prose[before.end : who.start] in (" ", "\n")


def _antecedent(page: Page, tokens: Sequence[Token], at: int, vocabulary: Vocabulary) -> int | None:
    """Where the name or the only one before token ``at`` begins; None if the clause says which."""
    last = tokens[at - 1]
    if last.tag == "POS" and at > 1 and tokens[at].text == "which":
        return at - 2 if _is_name(tokens[at - 2], vocabulary) else None
    if _is_name(last, vocabulary):
        first = at - 1
        while first and tokens[first - 1].text[:1].isupper() and tokens[first - 1].pos == "PROPN":
            first -= 1
        return first if _stands_by_itself(page, tokens, first, at) else None
    if last.text in _ONE_OF_EACH and at > 1 and tokens[at - 2].text.lower() in _OWNERS:
        return at - 2 if _stands_by_itself(page, tokens, at - 2, at) else None
    if (
        last.text in _ELDEST
        and at > 2
        and tokens[at - 2].text == "the"
        and tokens[at - 3].text == ","
    ):
        return at - 2
    return None


def _is_name(token: Token, vocabulary: Vocabulary) -> bool:
    return token.text[:1].isupper() and len(token.text) > 1 and vocabulary.is_name(token.text)


def _stands_by_itself(page: Page, tokens: Sequence[Token], first: int, at: int) -> bool:
    """Not asked, not picked out among others, and not a place whose people the clause is about."""
    edge = first
    while edge and tokens[edge - 1].pos in ("ADJ", "NOUN", "PROPN", "PUNCT") and edge > first - 3:
        if tokens[edge - 1].text in _MARKS:
            break
        edge -= 1
    near = {token.text.lower() for token in tokens[max(0, edge - 1) : first]}
    if not near.isdisjoint(_KEEPS_TOGETHER) or _CLEFT.search(page.prose[: tokens[first].start]):
        return False
    before = tokens[first - 1].text.lower() if first else ""
    return (
        tokens[at].text == "which"
        or before not in _PLACE_BEFORE
        or tokens[first].text.removesuffix(".") in _TITLES
    )


def _reading(page: Page, tokens: Sequence[Token], at: int) -> tuple[int, str]:
    """Where the fault ends and how it reads from the first comma on, with a second one if needed."""
    who = tokens[at]
    closing = _clause_end(tokens, at)
    if closing is None:
        return who.end, f" {who.text}"
    end = tokens[closing].end
    return end, page.text[tokens[at - 1].end : end] + ","


def _clause_end(tokens: Sequence[Token], at: int) -> int | None:
    """The last token of the aside, where the sentence's own verb follows it without a mark."""
    head = tokens[at - 1]
    verb = head.head
    if head.dep not in ("nsubj", "nsubjpass") or verb <= at or tokens[verb].tag not in _FINITE:
        return None
    relative = next(
        (i for i in range(at + 1, verb) if tokens[i].dep == "relcl" and tokens[i].head == at - 1),
        None,
    )
    if relative is None:
        return None
    inside = [i for i in range(at, verb) if _lies_under(tokens, i, relative)]
    last = max(inside)
    return (
        last
        if tokens[last].text not in (",", ".", "!", "?") and tokens[last + 1].text != ","
        else None
    )


def _lies_under(tokens: Sequence[Token], at: int, top: int) -> bool:
    for _ in range(len(tokens)):
        if at == top:
            return True
        if tokens[at].head == at:
            return False
        at = tokens[at].head
    return False
