"""No comma between what someone is and what he is called.

What it finds
    "They met an old hunter Bombo": someone who is new to the story, with "a" or "an", and straight
    after it a name. "The hunter Bombo" and "my friend Bombo" are left alone: there the name says which.
    Where the first comma is there and the second is not ("Her uncle, Bombo came in"), the second is
    shown.

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
from proofkit.words.vocabulary import Vocabulary, opens_sentence

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
_KIN = word_set(
    "mother father mum mom dad grandmother grandfather grandma grandpa wife husband son daughter"
)
_DESCRIBES = frozenset(("ADJ", "ADV", "NOUN"))
_FINITE = frozenset(("VBD", "VBZ", "VBP", "MD"))
_ENDS = tuple('.!?;:"“”')
_LONGEST = 4


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue each."""
    places = (
        place
        for page in book.pages
        for finder in (_before_name, _after_name)
        for place in finder(page, analysis.page(page.number).tokens, analysis.vocabulary)
    )
    yield from rows(book, NAME, places)


def _before_name(page: Page, tokens: Sequence[Token], vocabulary: Vocabulary) -> Iterator[Missing]:
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
        if aside and (tokens[last + 1].tag == "POS" or _is_liked(tokens, at, last + 1)):
            continue
        yield Missing(
            span=page.span(noun.start, tokens[last].end),
            reading=f"{noun.text}, {page.text[name.start : tokens[last].end]}{',' if aside else ''}",
            message="a comma between what someone is and the name",
            tier=Tier.ERROR,
            confidence=0.7,
        )


def _after_name(page: Page, tokens: Sequence[Token], vocabulary: Vocabulary) -> Iterator[Missing]:
    """Her uncle, Bombo from the hill came in: the name is an aside, and its second comma is missing."""
    for at in range(3, len(tokens) - 1):
        if tokens[at - 1].text != "," or not _opens_with_owner(page, tokens, at - 2):
            continue
        if not (tokens[at].text[:1].isupper() and vocabulary.is_name(tokens[at].text)):
            continue
        last = _end_of_phrase(tokens, _end_of_name(tokens, at, vocabulary), vocabulary)
        if last + 1 < len(tokens) and tokens[last + 1].tag in _FINITE:
            yield Missing(
                span=page.span(tokens[last].start, tokens[last + 1].end),
                reading=f"{tokens[last].text}, {tokens[last + 1].text}",
                message="the second comma of an aside",
                tier=Tier.ERROR,
                confidence=0.75,
            )


def _opens_with_owner(page: Page, tokens: Sequence[Token], noun: int) -> bool:
    """Whether a sentence begins with his, her or their and this noun: it can be nothing but its subject."""
    if tokens[noun].text not in _PERSONS and tokens[noun].text not in _KIN:
        return False
    first = noun - 1
    while first > 0 and tokens[first].pos == "ADJ":
        first -= 1
    owner = tokens[first]
    return owner.text in ("His", "Her", "Their", "Its") and opens_sentence(page.prose, owner.start)


def _end_of_phrase(tokens: Sequence[Token], last: int, vocabulary: Vocabulary) -> int:
    """The name with what says where from: Bombo from Far Hill."""
    if last + 2 < len(tokens) and tokens[last + 1].text in ("from", "of"):
        place = last + 2
        if tokens[place].text == "the" and place + 1 < len(tokens):
            place += 1
        return _end_of_name(tokens, place, vocabulary)
    return last


def _is_liked(tokens: Sequence[Token], name: int, after: int) -> bool:
    """She saw a boy Tom liked: the sentence has its verb, and the name is the subject of another."""
    if tokens[after].tag not in _FINITE:
        return False
    for token in reversed(tokens[:name]):
        if token.text in _ENDS:
            return False
        if token.tag in _FINITE:
            return True
    return False


def _is_new(tokens: Sequence[Token], at: int) -> bool:
    """Whether "a" or "an" stands before the noun, with nothing but describing words between."""
    for place in range(at - 1, max(-1, at - 1 - _LONGEST), -1):
        if tokens[place].text.lower() in ("a", "an"):
            # "What a good man Bombo is!"
            return place == 0 or tokens[place - 1].text.lower() not in ("what", "such", "as")
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
