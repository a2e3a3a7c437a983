"""Whether the text itself makes a hard word plain: it is explained, named, or said again more simply."""

from __future__ import annotations

import re

from proofkit.book import Span
from proofkit.reading.sentences import sentences
from proofkit.reading.simpler import own_words, thesaurus
from proofkit.words.forms import past_of, plural_of, third_person_of

_EARSHOT = 160  # characters
# After the word: “a dhow, which is a boat”, “a dhow – a boat with one sail”, “A dhow is a kind of boat”.
_EXPLAINED = re.compile(
    r"s?[”’\"']?(?:,? (?:which|that) (?:is|was|are|were) (?:an? |the |what |like |how )"
    r"|,? (?:which |that )?means\b|, (?:which meant|meaning)\b"
    r"|,? (?:is|was|are|were) (?:an? |the )?(?:kind|sort|type)s? of\b"
    r"|,? (?:is|was|are|were) (?:what|when|how) (?:you|we|they|people)\b"
    r"|,? (?:a|some) (?:kind|sort|type) of\b"
    r"|,? or [a-z]+, "
    r"|,? (?:that is|that’s|that's|in other words),? "
    r"| [–—-]+ (?:an? |the |that |some )"
    r"| \((?:an? |the |that |like )"
    r"|, an? (?:[a-z-]+ ){1,5}(?:with|that|who|which|like|made|for|of)\b)",
    re.IGNORECASE,
)
# Before it: “a boat called a dhow”, “It’s called a dhow”, “the word dhow”.
_NAMED = re.compile(
    r"\b(?:(?:is|was|are|were|’s|'s|they|we|I|it|you|people|be) (?:all )?call(?:s|ed)?(?: (?:it|them|this|that))?"
    r"|called|named|known as|the word|means|meaning|that is|in other words),?:? "
    r"(?:an? |the |to be )?[“‘\"'*_]*$",
    re.IGNORECASE,
)


def is_shown(prose: str, span: Span, lemma: str) -> bool:
    """Whether the page explains the word at ``span``, or has a simpler one for it close by."""
    before = prose[max(0, span.start - _EARSHOT) : span.start]
    after = prose[span.end : span.end + _EARSHOT]
    if _EXPLAINED.match(after) or _NAMED.search(before):
        return True
    return _said_again(prose, span, lemma)


def _said_again(prose: str, span: Span, lemma: str) -> bool:
    """Whether a word of the same sense stands in the same sentence or one beside it."""
    places = list(sentences(prose))
    here = next((n for n, (start, end) in enumerate(places) if start <= span.start < end), None)
    if here is None:
        return False
    start, end = places[max(0, here - 1)][0], places[min(len(places) - 1, here + 1)][1]
    around = f"{prose[start : span.start]} {prose[span.end : end]}".lower()
    return not _synonyms(lemma).isdisjoint(re.findall(r"[a-z]+", around))


def _synonyms(lemma: str) -> frozenset[str]:
    """Our own words for it and the thesaurus's likelier ones, in all their forms."""
    words = {
        other
        for letter in "nvar"
        for other, weight in thesaurus().get((lemma, letter), {}).items()
        if weight >= _LIKELY
    }
    words = words.union(*(own_words().get((lemma, letter), ()) for letter in "nvar"))
    makers = (past_of, plural_of, third_person_of)
    return frozenset(words.union(*({make(word) for word in words} for make in makers)))


_LIKELY = 15  # of 99
