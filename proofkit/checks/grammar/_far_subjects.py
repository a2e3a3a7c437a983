"""A subject with more than a phrase between it and its verb.

An aside in commas (*Rosa, in fact, were*), a clause about the subject (*the noise they made were*), or
another deed of the same one (*they sat down and was silent*).
"""

from __future__ import annotations

from collections.abc import Sequence

from proofkit.analysis import Token
from proofkit.checks.grammar._clauses import opens_clause, phrase_start
from proofkit.words.lists import word_set

_FINITE = frozenset({"VBD", "VBZ", "VBP", "MD"})
_NOUNS = frozenset({"NN", "NNS", "NNP"})
_LONGEST = 14  # tokens
_ASIDE = frozenset({"IN", "WRB", "WP", "WDT", "VBG", "VBN", "RB", "TO"})
_JOINS = word_set("and but")
_RELATIVES = word_set("who which that whom whose")
_NOMINATIVES = word_set("he she they we i")
_STOPS = frozenset('.!?:;"“”‘’…—–()')


def far_subject(tokens: Sequence[Token], at: int) -> int | None:
    """The place of such a subject of the verb at ``at``, where the sentence allows no other."""
    if at < 2:
        return None
    previous = tokens[at - 1].text.lower()
    if previous == ",":
        return _before_aside(tokens, at)
    if previous in _JOINS:
        return _of_first_deed(tokens, at)
    return _before_clause(tokens, at)


def _before_aside(tokens: Sequence[Token], at: int) -> int | None:
    """The noun or name that opens a clause, before an aside in commas: *The cook, in his turn, were*."""
    comma = next(
        (i for i in range(at - 2, max(0, at - _LONGEST), -1) if tokens[i].text == ","), None
    )
    if comma is None or at - comma < 3 or tokens[comma + 1].tag not in _ASIDE:
        return None
    inside = tokens[comma + 1 : at - 1]
    if any(token.text[0] in _STOPS or token.tag == "CC" for token in inside):
        return None
    return _opening_noun(tokens, comma - 1)


def _opening_noun(tokens: Sequence[Token], noun: int) -> int | None:
    """The noun, if its phrase opens a clause and nothing joins it to another."""
    if noun < 0 or tokens[noun].tag not in _NOUNS:
        return None
    first = phrase_start(tokens, noun)
    joined = first > 0 and tokens[first - 1].text.lower() in ("and", "or", "as", "than")
    determined = first < noun and tokens[first].tag in ("DT", "PRP$")
    alone = tokens[noun].tag == "NNP" or determined
    return noun if alone and not joined and opens_clause(tokens, first) else None


def _before_clause(tokens: Sequence[Token], at: int) -> int | None:
    """The noun that a short clause tells more of: *the noise they made*, *the man who came to see him*."""
    finite = [i for i in range(max(0, at - _LONGEST), at) if tokens[i].tag in _FINITE]
    if not finite:
        return None
    verb = finite[-1]
    opener = verb - 1
    while opener > 0 and tokens[opener].tag == "RB":
        opener -= 1
    word = tokens[opener].text.lower()
    if word not in ("who", "that", "which") and word not in _NOMINATIVES:
        return None
    inside = tokens[opener + 1 : at]
    if any(
        token.text[0] in _STOPS or token.text == "," or token.tag in ("CC", "WP", "WRB")
        for token in inside
    ):
        return None
    noun = opener - 1
    bare = tokens[verb].tag == "VBD" and verb == at - 1
    if word in _NOMINATIVES and not bare:
        return None
    return _opening_noun(tokens, noun)


def _of_first_deed(tokens: Sequence[Token], at: int) -> int | None:
    """The subject of the deed before "and", where the sentence has just that one."""
    first = at - 1
    while first and tokens[first - 1].text[0] not in _STOPS:
        first -= 1
    before = tokens[first : at - 1]
    if any(t.text.lower() in _RELATIVES or t.tag in ("WP", "WDT", "EX") for t in before):
        return None
    subjects = [i for i in range(first, at - 1) if tokens[i].dep in ("nsubj", "nsubjpass")]
    finite = [i for i in range(first, at - 1) if tokens[i].tag in _FINITE]
    if len(subjects) != 1 or not finite or subjects[0] > finite[0]:
        return None
    if finite[0] > subjects[0] + 2 or any(tokens[i].tag == "VBP" for i in finite):
        return None
    head = tokens[at].head if tokens[at].dep.startswith("aux") else at
    if tokens[head].dep != "conj":
        return None
    return subjects[0]
