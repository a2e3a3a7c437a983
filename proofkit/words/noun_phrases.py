"""Where a noun stands with or without its article, seen from the words and tags around it.

Shared by the check for a missing article and by ``wordlists/make_bare_nouns.py``, which counts with it:
what was counted must be what is asked.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

EDGE = "^"  # the beginning of a sentence
PLAIN = "-"  # no adjective

_FARTHEST = 9
_MOST_BEFORE = 4  # words between an article and its noun
_DETERMINERS = frozenset({"DT", "PRP$", "POS", "WDT", "WP$", "PDT", "CD"})
# What else may stand there: *the glittering old world*, *a small but deep pool*, *the March sun*.
_BETWEEN = frozenset("JJ JJR JJS NN HYPH AFX NNP NNPS NNS VBG VBN VBD RB RBS RBR CC FW ,".split())
_KINDS = frozenset({"kind", "sort", "type"})
_DESCRIBING = frozenset({"JJ", "JJR", "JJS", "NN", "HYPH", "AFX"})
_GOES_ON = frozenset({"NN", "NNS", "NNP", "NNPS", "POS", "HYPH", "CD"})
_STOPS = frozenset('.!?:;"“”‘…—–')
_CLOSED = frozenset(
    {"IN", "TO", "CC", "MD", "PRP", "PRP$", "WDT", "WRB", "WP", "EX", ",", ".", ":", "RP", "DT"}
)


@dataclass(frozen=True, slots=True, kw_only=True)
class NounPhrase:
    """A noun for one thing, with what tells whether it needs an article.

    ``first``       the place of the phrase's first word, the article left out
    ``determined``  whether an article, a possessive or the like stands before it
    ``noun``        the noun; ``before`` the word before the phrase and its article, EDGE at a sentence's
                    beginning, "" where an owner stands there (*the fox's den*)
    ``describing``  the phrase's first word if it isn't the noun, else PLAIN
    ``after``       the word after it if it is a small one or a mark, else its tag
    """

    first: int
    determined: bool
    noun: str
    before: str
    describing: str
    after: str


def noun_phrase(words: Sequence[str], tags: Sequence[str], at: int) -> NounPhrase | None:
    """The phrase whose last word is the noun at ``at``; None where no singular noun ends a phrase."""
    if tags[at] != "NN" or not words[at].isalpha():
        return None
    if at + 1 < len(words) and (tags[at + 1] in _GOES_ON or words[at + 1] in "-‑/'’"):
        return None
    first = _first(words, tags, at)
    outer = first
    while outer and tags[outer - 1] in _DETERMINERS:
        outer -= 1
    return NounPhrase(
        first=first,
        determined=outer < first or _determined_further_off(words, tags, first),
        noun=words[at].lower(),
        before=_before(words, outer) if "POS" not in tags[outer:first] else "",
        describing=words[first].lower() if first < at else PLAIN,
        after=_after(words, tags, at),
    )


def _first(words: Sequence[str], tags: Sequence[str], at: int) -> int:
    first = at
    while first and at - first < _MOST_BEFORE and _describes(words, tags, first - 1):
        first -= 1
    return first


def _describes(words: Sequence[str], tags: Sequence[str], at: int) -> bool:
    """Whether the word may stand between an article and the noun: big, very (big), broken."""
    tag = tags[at]
    if tag in _DESCRIBING:
        return True
    if tag == "RB":
        return tags[at + 1] in ("JJ", "JJR", "VBN") and words[at].lower() != "not"
    if tag == ",":
        return tags[at + 1] == "JJ" and at > 0 and tags[at - 1] == "JJ"
    return tag == "VBN" and at > 0 and tags[at - 1] in ("DT", "PRP$", "JJ", "IN", "POS")


def _determined_further_off(words: Sequence[str], tags: Sequence[str], first: int) -> bool:
    """Whether an article may belong to the phrase although an unusual word stands between."""
    place = first - 1
    while place >= 0 and first - place <= _FARTHEST:
        if tags[place] in _DETERMINERS:
            return True
        if not _may_describe(words, tags, place):
            return False
        place -= 1
    return False


def _may_describe(words: Sequence[str], tags: Sequence[str], at: int) -> bool:
    if "HYPH" in tags[max(0, at - 1) : at + 2]:
        return True
    if words[at].lower() == "of":
        return at > 0 and words[at - 1].lower() in _KINDS
    if tags[at] in ("CC", ","):
        return _joins_adjectives(tags, at)
    if tags[at] in ("VBG", "VBN", "VBD", "NN", "NNS") and tags[at + 1] in ("RB", "CC"):
        return False
    return tags[at] in _BETWEEN


def _joins_adjectives(tags: Sequence[str], at: int) -> bool:
    before, after = tags[at - 1], tags[at + 1]
    hyphened = tags[at + 2 : at + 3] == ["HYPH"]
    return at > 0 and before[:2] in ("JJ", "VB") and (hyphened or after[:2] in ("JJ", "RB", "VB"))


def _before(words: Sequence[str], at: int) -> str:
    word = words[at - 1].lower() if at else EDGE
    return EDGE if word[:1] in _STOPS else word


def _after(words: Sequence[str], tags: Sequence[str], at: int) -> str:
    if at + 1 >= len(words):
        return "."
    tag = tags[at + 1]
    word = words[at + 1].lower()
    return "." if word[:1] in _STOPS else word if tag in _CLOSED else tag
