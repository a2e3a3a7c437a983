"""The comma before "and" in a list of three or more.

Oxford and American books have it always; most British publishers leave it out unless it prevents a
misreading (New Hart's Rules; Chicago asks for it).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from proofkit.analysis import Analysis, Token
from proofkit.book import Book, Span
from proofkit.habits._places import usage_of
from proofkit.habits.usage import Usage

MATTER = "serial-comma"
FORMS = ("always", "never")

_JOINTS = ("and", "or")
_LONGEST_ITEM = 5  # words; longer ones are clauses, where a comma is a matter of breath
_NOUNS = ("NOUN", "PROPN")
_IN_PHRASE = ("DET", "ADJ", "NUM", "NOUN", "PROPN", "PRON", "ADV")
# "And then" and the like begin something new rather than end a list.
_GOES_ON = (
    "then",
    "so",
    "also",
    "finally",
    "last",
    "even",
    "there",
    "that",
    "now",
    "yet",
    "perhaps",
)


def usage(book: Book, analysis: Analysis) -> Usage:
    """Every list of three nouns, verbs or adjectives; each place runs from the last comma's to the joint."""
    return usage_of(
        MATTER,
        (
            place
            for page in book.pages
            for place in _on_page(page.number, analysis.page(page.number).tokens)
        ),
    )


def _on_page(page: int, tokens: Sequence[Token]) -> Iterator[tuple[str, Span]]:
    for at, joint in enumerate(tokens):
        if joint.text not in _JOINTS or at < 3 or at + 1 >= len(tokens):
            continue
        serial = tokens[at - 1].text == ","
        end = at - 1 if serial else at
        comma = _comma_before(tokens, end)
        if comma is not None and _is_list(tokens, comma, end, at):
            yield FORMS[not serial], Span(page=page, start=tokens[end - 1].end, end=joint.end)


def _comma_before(tokens: Sequence[Token], end: int) -> int | None:
    """The comma that opens the item before the joint; None where the item is too long for one."""
    for at in range(end - 1, max(0, end - _LONGEST_ITEM - 2), -1):
        if tokens[at].text == ",":
            return at if at < end - 1 else None
        if not tokens[at].text[0].isalpha() and tokens[at].text not in ("'s", "’s"):
            return None
    return None


def _is_list(tokens: Sequence[Token], comma: int, end: int, joint: int) -> bool:
    """Whether the words before the comma, between it and the joint, and after it are of one kind."""
    if tokens[joint + 1].text.lower() in _GOES_ON or any(
        token.text in _JOINTS
        for token in (*tokens[max(0, comma - 2) : comma], *tokens[comma + 1 : end])
    ):
        return False
    first, second = tokens[comma - 1], tokens[end - 1]
    # A lone word that joins a noun is one too: the model takes "geese" for an adjective.
    if second.tag == "VBG" and end == comma + 2:
        return first.tag == tokens[joint + 1].tag == "VBG"
    if second.pos in _NOUNS or (
        first.pos in _NOUNS and second.dep == "conj" and second.pos == "ADJ"
    ):
        return first.pos in _NOUNS and _are_nouns(tokens, comma, end, joint)
    if second.pos == "ADJ" and end == comma + 2:
        return first.pos == "ADJ" and tokens[joint + 1].pos == "ADJ"
    return _are_verbs(tokens, comma, joint)


def _are_nouns(tokens: Sequence[Token], comma: int, end: int, joint: int) -> bool:
    if any(token.pos not in _IN_PHRASE for token in tokens[comma + 1 : end] if token.tag != "POS"):
        return False
    third = _head_after(tokens, joint + 1)
    if third is None or tokens[third].dep != "conj":
        return False
    if any(tokens[at].dep == "conj" and tokens[at].head < comma for at in range(comma + 1, end)):
        return True
    # The model takes "a cup, a plate" for one thing said twice. Three articles say that it is a list;
    # so do three plurals without any.
    first = tokens[max(0, comma - _LONGEST_ITEM + 1) : comma]
    if all(_determines(tokens[at]) for at in (comma + 1, joint + 1)):
        return any(_determines(token) for token in first)
    plurals = all(tokens[at].tag == "NNS" for at in (comma - 1, end - 1, third))
    return plurals and not any(_determines(token) for token in (*first[-3:], tokens[comma + 1]))


def _determines(token: Token) -> bool:
    return token.pos in ("DET", "NUM") or token.tag == "PRP$"


def _head_after(tokens: Sequence[Token], at: int) -> int | None:
    """The noun of the phrase that begins at ``at``; None where it is none, or a sentence of its own."""
    for place in range(at, min(len(tokens), at + _LONGEST_ITEM)):
        token = tokens[place]
        following = tokens[place + 1].pos if place + 1 < len(tokens) else ""
        if token.pos in _NOUNS and following not in (*_NOUNS, "PART"):
            return place
        if token.pos not in _IN_PHRASE:
            return None
    return None


def _are_verbs(tokens: Sequence[Token], comma: int, joint: int) -> bool:
    """Ran, jumped and sang: verbs in the past come first in their items and have no subject of their own."""
    second, third = tokens[comma + 1], tokens[joint + 1]
    past = ("VBD", "VBN")  # the model takes one for the other in a list
    if second.dep != "conj" or second.tag not in past or third.tag not in past:
        return False
    before = tokens[max(0, comma - _LONGEST_ITEM) : comma]
    if all(token.tag != "VBD" for token in before) or any(
        token.lemma in ("be", "have") for token in (*before, *tokens[comma:joint])
    ):
        return False
    return not any(
        token.dep in ("nsubj", "nsubjpass", "expl") and token.head in (comma + 1, joint + 1)
        for token in tokens[comma + 1 : joint + 1 + _LONGEST_ITEM]
    )
