"""A noun for one where more are counted, or a noun for many after a word for one.

What it finds
    "two dog ran", "three little pig", "many animal", "one of her friend", "a birds", "every days". Nouns
    that English counts without a plural (three sheep, ten foot) are left alone, and so is a number before
    a noun that describes another (two dog bowls). In speech it is asked about, but not in dialect.

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
from proofkit.checks.grammar._voices import tier_at
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.dictionary import Dictionary, dictionary
from proofkit.words.forms import has_one_form, plural_of, singular_of
from proofkit.words.lists import word_set

NAME = "grammar/counted-noun"
NEEDS = frozenset({Need.LANGUAGE_MODEL})

_NUMBERS = word_set("""
two three four five six seven eight nine ten eleven twelve fifteen twenty thirty forty fifty several
""")
_MANY = _NUMBERS | word_set("many few both these those")
_ONE = word_set("a an every each another")
_OF = word_set(
    "one two three four five six seven eight nine ten many several few each both another either neither"
)
_OWNERS = word_set("the his her my our your their its these those")
# More than one is in them already, or they are no things to be counted.
_NEVER = word_set("""
o'clock one more less other many kind sort type family crew team party crowd
class group bunch lot couple company gang band herd flock army public audience world rest whole earth sun
best first last next old young rich poor most least present number past future same fruit hair luggage
furniture food bread water milk money news such enough self else alive home
something anything nothing everything jury board committee council staff choir orchestra gentry nobility clergy
people press senate shear way
shears ways
""")
# After these the noun may only be describing what follows: "two dog bowls", "three year old".
_GOES_ON = frozenset({"NOUN", "PROPN", "ADJ", "NUM"})
_JOINTS = frozenset({"-", "‑", "/", "'", "’", "'s", "’s"})
_MORE, _ONLY_ONE = (
    "more than one, so the noun needs its plural",
    "only one, so the noun needs no plural",
)

_SURE, _SPOKEN = 0.75, 0.55
_Found = tuple[int, str, str]


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue for each noun in the wrong number; a query where somebody speaks."""
    words = dictionary(analysis.english)
    for page in book.pages:
        tokens = analysis.page(page.number).tokens
        for at, reading, why in _on_page(tokens, words):
            start = tokens[at].start
            tier = tier_at(book, analysis, page, start)
            if tier:
                yield issue_at(
                    book,
                    page.span(start, tokens[at].end),
                    check=NAME,
                    tier=tier,
                    message=why,
                    confidence=_SURE if tier is Tier.ERROR else _SPOKEN,
                    suggestions=[reading],
                )


def _on_page(tokens: Sequence[Token], words: Dictionary) -> Iterator[_Found]:
    for at in range(1, len(tokens)):
        noun = tokens[at].text
        first = _counter(tokens, at)
        if first is None or not noun.islower() or noun in _NEVER or _describes(tokens, at, words):
            continue
        if tokens[at].tag == "NN" and _counts_many(tokens, first, at):
            plural = plural_of(noun)
            if not has_one_form(noun) and words.knows(noun) and words.knows(plural):
                yield at, plural, _MORE
        elif tokens[at].tag == "NNS" and _counts_one(tokens, first, at):
            singular = singular_of(noun, words)
            if singular:
                yield at, singular, _ONLY_ONE


def _counter(tokens: Sequence[Token], at: int) -> int | None:
    """The place of the number, article or owner before the noun; up to two adjectives may part them."""
    for first in range(at - 1, max(-1, at - 4), -1):
        word = tokens[first].text.lower()
        if word in _MANY or word in _ONE or word in _OWNERS:
            return first if _touch(tokens[first : at + 1]) else None
        if tokens[first].pos != "ADJ" and tokens[first].tag not in ("VBN", "VBG", "RB"):
            return None
    return None


def _counts_many(tokens: Sequence[Token], first: int, at: int) -> bool:
    word = tokens[first].text.lower()
    before = tokens[first - 1].text.lower() if first else ""
    if before == "of" and word in _OWNERS:
        return first > 1 and tokens[first - 2].text.lower() in _OF and not _joined(tokens, at)
    behind = word == "both" and first and tokens[first - 1].tag in ("NN", "NNS", "NNP", "PRP")
    if word not in _MANY or behind or _joined(tokens, at):
        return False
    if first and (
        tokens[first - 1].tag == "CD"
        or (before in ("page", "-", "–", "number", "a") and word in _NUMBERS)
    ):
        return False
    return not (before in ("and", "or") and first > 1 and tokens[first - 2].tag == "CD")


def _counts_one(tokens: Sequence[Token], first: int, at: int) -> bool:
    word = tokens[first].text
    if word not in _ONE and word not in ("A", "An", "Every", "Another"):
        return False
    if any(
        token.tag == "CD" or token.text in ("few", "many", "couple", "other")
        for token in tokens[first:at]
    ):
        return False
    after = tokens[at + 1].tag if at + 1 < len(tokens) else "."
    pronoun = word.lower() in ("each", "another")
    return not (pronoun and after in ("DT", "PRP", "PRP$", "IN", "RB", "RP", "TO"))


def _joined(tokens: Sequence[Token], at: int) -> bool:
    """Whether another noun may share the number: *two dog and cat bowls*, *both king and queen*."""
    after = tokens[at + 1 : at + 4]
    return any(t.tag == "CC" for t in after[:1]) and any(t.tag.startswith("NN") for t in after[1:])


def _describes(tokens: Sequence[Token], at: int, words: Dictionary) -> bool:
    """Whether the next word is the noun that counts: *two dog bowls*, whatever the model takes it for."""
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    if after is None:
        return False
    plural = tokens[at].tag == "NN" and after.tag == "VBZ" and singular_of(after.text, words)
    return after.pos in _GOES_ON or after.text in _JOINTS or bool(plural and after.dep == "ROOT")


def _touch(tokens: Sequence[Token]) -> bool:
    return all(left.end + 1 == right.start for left, right in pairwise(tokens))
