"""What stands at the left edge of a noun phrase: an article, an owner, a describing word, or nothing.

The tag of the noun in question is never trusted: a language model explains slips away. Only its
neighbours are read, and the words that can only be determiners by their form.
"""

from __future__ import annotations

from enum import Enum

from proofkit.analysis import PageAnalysis, Token
from proofkit.words.lists import word_set

POSSESSIVES = word_set("my your his her its our their whose yer thy")
_ARTICLES = frozenset({"the"})
_DETERMINERS = POSSESSIVES | word_set(
    """
    the a an this that these those some any no every each another either neither both all
    which what such one two three four five six seven eight nine ten many several few other
    """
)
_HYPHENS = ("-", "‑")
_OPENING_MARKS = tuple("\"'“‘(")
# "One day Fox came": the noun before is a time, and the phrase ends with it.
_TIMES = word_set(
    """
    day night morning evening afternoon noon midnight dawn dusk time moment minute hour week
    month year today tomorrow yesterday tonight spring summer autumn winter monday tuesday
    wednesday thursday friday saturday sunday bedtime teatime lunchtime
    """
)
_DESCRIBES = frozenset({"ADJ", "NOUN", "PROPN", "NUM"})


class Edge(Enum):
    """What a noun phrase begins with."""

    BARE = "nothing before the noun"
    THE = "the"
    OWNED = "my, her, Goose's"
    DETERMINED = "another article or number"
    DESCRIBED = "an adjective or noun, and no article"


def left_edge(page: PageAnalysis, at: int) -> Edge:
    """How the noun phrase of token ``at`` begins."""
    tokens = page.tokens
    place = at - 1
    described = False
    while place >= 0 and _is_describing(tokens, place):
        described = True
        place -= 1
    if _owns(tokens, place) and _touches(tokens[place], tokens[place + 1]):
        return Edge.OWNED
    if place >= 1 and tokens[place].text in _OPENING_MARKS:
        place -= 1
    if place >= 0 and _touches(tokens[place], tokens[place + 1]):
        word = tokens[place].text.lower()
        if word in _ARTICLES:
            return Edge.THE
        if word in POSSESSIVES or tokens[place].tag == "POS":
            return Edge.OWNED
        if word in _DETERMINERS and tokens[place].pos != "SCONJ":
            return Edge.DETERMINED
    return Edge.DESCRIBED if described else Edge.BARE


def joined_before(page: PageAnalysis, at: int) -> int | None:
    """The token that "and", "or" or a comma joins to token ``at``: "father" in "her father and mother"."""
    tokens = page.tokens
    if at >= 2 and tokens[at - 1].text.lower() in ("and", "or", "nor", ",", "&"):
        joined = tokens[at - 2]
        if joined.pos in ("NOUN", "PROPN"):
            return at - 2
    return None


def _is_describing(tokens: tuple[Token, ...], at: int) -> bool:
    """Whether the token is an adjective or noun that leans on the next."""
    word = tokens[at].text.lower()
    if word in _HYPHENS or (at and tokens[at - 1].text in _HYPHENS):
        return True
    if word in _DETERMINERS or word in _TIMES or _closes_an_adverb(tokens, at):
        return False
    return (
        (tokens[at].pos in _DESCRIBES or _is_participle(tokens, at))
        and tokens[at].tag != "POS"
        and _touches(tokens[at], tokens[at + 1])
    )


def _owns(tokens: tuple[Token, ...], at: int) -> bool:
    """The boys' father, James' mother: the apostrophe may look like a closing mark."""
    return at > 0 and tokens[at].text in ("'", "’") and tokens[at - 1].text.endswith("s")


def _is_participle(tokens: tuple[Token, ...], at: int) -> bool:
    """A wounded soldier, her dear adopted mother: an article or adjective stands before the form."""
    if not at or tokens[at].tag not in ("VBN", "VBG"):
        return False
    return tokens[at - 1].text.lower() in _DETERMINERS or tokens[at - 1].pos == "ADJ"


def _closes_an_adverb(tokens: tuple[Token, ...], at: int) -> bool:
    """At last, at first, in short: two words that make an adverb."""
    before = tokens[at - 1].text.lower() if at else ""
    return before in ("at", "in") and tokens[at].text.lower() in ("last", "first", "once", "short")


def _touches(token: Token, after: Token) -> bool:
    """Whether nothing but a space, or nothing, stands between."""
    return token.end >= after.start - 1
