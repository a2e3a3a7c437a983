"""A verb before its subject: *where is you*, *what are his name*; and a verb that *would* or *to* keeps bare."""

from __future__ import annotations

from collections.abc import Sequence

from proofkit.analysis import Token
from proofkit.checks.grammar._clauses import STOPS
from proofkit.words.lists import word_set

_ASKING = word_set("what where why how when who whom whose which")
_PRONOUNS = word_set("i you he she it we they")
_POINTING = word_set("this that these those")
_MODALS = word_set("can could will would shall should may might must")
_NOT = word_set("n't n’t not")
_HANGS = word_set("of with in and or but nor to for from who that which than on at by as")
_DESCRIBING = frozenset("JJ JJR JJS NN NNS NNP HYPH POS".split())
_DETERMINERS = frozenset({"DT", "PRP$"})


def inverted_subject(tokens: Sequence[Token], at: int) -> int | None:
    """The place of the subject that stands behind the verb at ``at``, where the clause is a question."""
    asked = at > 0 and tokens[at - 1].text.lower() in _ASKING and _begins(tokens, at - 1)
    opens = tokens[at].text[0].isupper() and _begins(tokens, at)
    if not (asked or opens):
        return None
    place = at + 1
    while place < len(tokens) and tokens[place].text.lower() in _NOT:
        place += 1
    if place >= len(tokens):
        return None
    if tokens[place].text.lower() in _PRONOUNS:
        return _pronoun(tokens, at, place, asked=asked)
    if (
        tokens[place].text in _POINTING
        and place + 1 < len(tokens)
        and tokens[place + 1].text[0] in ".?!,"
    ):
        return place
    return _noun(tokens, place) if asked and _question(tokens, place) else None


def after_modal(tokens: Sequence[Token], at: int) -> bool:
    """Whether *would*, *can* or the like stands right before the verb, or one pronoun from it."""
    place = at - 1
    pronoun = place >= 0 and tokens[place].text.lower() in _PRONOUNS
    if pronoun:
        place -= 1
    while place > 0 and (
        tokens[place].text.lower() in _NOT or (not pronoun and _adverb(tokens[place]))
    ):
        place -= 1
    noun = place > 0 and tokens[place - 1].tag in ("NN", "DT", "JJ", "PRP$")
    if noun and tokens[place].text.lower() in ("can", "will", "might", "may"):
        return False  # "the ash can has"
    if place < 0 or tokens[place].text.lower() not in _MODALS or tokens[place].tag != "MD":
        return False
    return not pronoun or tokens[place].text[0].isupper() or (
        place > 0 and tokens[place - 1].text.lower() in _ASKING
    )  # fmt: skip


def _adverb(token: Token) -> bool:
    return token.text.lower() in (
        "never",
        "always",
        "only",
        "also",
        "just",
        "still",
        "ever",
        "even",
    )


def _begins(tokens: Sequence[Token], at: int) -> bool:
    """Whether a sentence, a speech or a clause after a comma begins at ``at``, perhaps with "and"."""
    if at and tokens[at - 1].text.lower() in ("and", "but", "so", "oh", "now", "then", "well"):
        at -= 1
    return at == 0 or tokens[at - 1].text[0] in STOPS or tokens[at - 1].text[0] in ",'"


def _pronoun(tokens: Sequence[Token], at: int, place: int, *, asked: bool) -> int | None:
    """The pronoun, unless it may be the object of another reading: *what is it you …*, *who was you*."""
    word = tokens[place].text.lower()
    if tokens[at].text.lower() == "were" and not asked:
        return None  # "Were he a king"
    if tokens[at].text.lower() in ("have", "do") and not asked:
        return None  # "Have it your way"
    if word in ("it", "you") and place + 1 < len(tokens):
        after = tokens[place + 1]
        if after.tag in ("VBD", "VBZ", "VBP", "MD", "CC"):
            return None
    return place


def _noun(tokens: Sequence[Token], first: int) -> int | None:
    """The last noun of a phrase with an article or an owner, where nothing but the question's end follows."""
    if tokens[first].tag == "NNP" and tokens[first + 1 : first + 2]:
        return first if tokens[first + 1].tag in ("JJ", "VBG", ".") else None
    if tokens[first].tag not in _DETERMINERS:
        return None
    place = first + 1
    while place < len(tokens) and tokens[place].tag in _DESCRIBING:
        place += 1
    noun = place - 1
    if noun == first or tokens[noun].tag not in ("NN", "NNS", "NNP"):
        return None
    after = tokens[place].text.lower() if place < len(tokens) else "."
    return noun if after[0] in ".?!" or after in ("of", "doing", "going", "about", "for") else None


def _question(tokens: Sequence[Token], at: int) -> bool:
    """Whether the sentence ends with a question mark, and joins nothing."""
    for token in tokens[at:]:
        if token.text == "?":
            return True
        if token.text[0] in ".!;" or token.text in ("and", "or"):
            return False
    return False
