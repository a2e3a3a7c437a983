"""Pairs of small words that are one word: him self, every where, may be, all ready, fell a sleep."""

from __future__ import annotations

import re
from collections.abc import Sequence

from proofkit.analysis import Token

# One word wherever they stand side by side.
_ALWAYS = frozenset(
    re.split(
        r",\s+",
        """him self, her self, my self, your self, it self, our selves, your selves, them selves,
        every where, any where, some where, no where, every thing, any thing, some thing, some body,
        any body, no body, every body, an other, in stead, mean while, other wise, good bye, to day,
        to night, to morrow, grand mother, grand father, grand ma, grand pa, grand son, grand daughter,
        grand parents, grand child, grand children, step mother, step father, step sister, step brother,
        god mother, god father, tip toe, tip toes, tip toed, tip toeing, be cause, be fore, be hind,
        be side, be tween, be neath, with out, al ways, al ready, al most, al though, to gether, a gainst, a mong""",
    )
)
_PARTS_OF_BODY = frozenset({"of", "part", "parts", "found", "lay"})
_NOMINATIVE = frozenset({"i", "he", "she", "we", "they", "there"})
_NEAR = 4
_EITHER_CASE = frozenset({"it", "you", "this", "that"})
_STATES = frozenset("asleep awake gone late dark knew open full empty dead old half far".split())
_ASKING = frozenset({"where", "when", "what", "which"})
# Pairs that are one word after these.
_TOLD_BEFORE: dict[str, frozenset[str]] = {
    "after noon": frozenset("this that one every the an next yesterday tomorrow good".split()),
    "a sleep": frozenset(
        "fell fall falls falling fallen fast sound was were is half still".split()
    ),
    "a wake": frozenset("wide still lay stayed lie".split()),
    "a gain": frozenset("once never and over back up down".split()),
    "a lone": frozenset("all was were is live lived quite".split()),
    "a live": frozenset("still was were is".split()),
}
_BREAKS = frozenset(
    {",", ".", ";", ":", "!", "?", "—", "–", "-", '"', "“", "”", "‘", "’", "'", "(", "…"}
)
_LINKS = frozenset({"and", "but", "or", "so", "because", "that", "then"})


def joined(tokens: Sequence[Token], at: int) -> tuple[str, float] | None:
    """The one word that the pair at ``at`` should be, and how sure that is; or None."""
    left, right = tokens[at].text.lower(), tokens[at + 1].text.lower()
    after = tokens[at + 2] if at + 2 < len(tokens) else None
    before = tokens[at - 1] if at else None
    pair = f"{left} {right}"
    if pair in _ALWAYS:
        return (left + right, 0.85) if _is_always(tokens, at) else None
    if right == "one" and left in ("every", "any", "some"):
        each = [token.text.lower() for token in tokens[max(0, at - 2) : at]] == ["each", "and"]
        return None if each else _indefinite(left, before, after)
    if pair == "may be":
        return ("maybe", 0.85) if _is_perhaps(tokens, at) else None
    if pair == "all ready":
        return ("already", 0.8) if _is_already(before, after) else None
    if right == "ever" and left in _ASKING:
        return (left.removesuffix("e") + right, 0.85) if _is_any(after) else None
    told = before is not None and before.text.lower() in _TOLD_BEFORE.get(pair, ())
    return (left + right, 0.85) if told and not (left == "a" and _goes_on(after)) else None


def _goes_on(after: Token | None) -> bool:
    """Whether a noun follows or may: he was a lone wolf."""
    return after is not None and after.pos in ("NOUN", "ADJ", "PROPN")


def _is_always(tokens: Sequence[Token], at: int) -> bool:
    """Whether none of the rare uses of a pair is meant: no body part, from morning to night."""
    left, right = tokens[at].text.lower(), tokens[at + 1].text.lower()
    after = tokens[at + 2].text.lower() if at + 2 < len(tokens) else ""
    if right == "body" and after in _PARTS_OF_BODY:
        return False
    lately = {token.text.lower() for token in tokens[max(0, at - _NEAR) : at]}
    return not (left == "to" and lately & {"from", right, "week"})


def _is_already(before: Token | None, after: Token | None) -> bool:
    """Was all ready asleep, had all ready gone, she all ready knew; not "We are all ready to go"."""
    if (
        before is None
        or after is None
        or before.pos not in ("AUX", "PRON", "PROPN", "NOUN", "VERB")
    ):
        return False
    if after.text.lower() in _STATES or after.tag in ("VBD", "VBN"):
        return True
    return after.tag == "VBG" and before.pos == "AUX"


def _is_any(after: Token | None) -> bool:
    """Where ever you like, what ever the weather; not "Where ever did you go?"."""
    return after is not None and (
        after.tag in ("PRP", "PRP$", "DT", "NN", "NNS", "NNP") or after.text.lower() in _NOMINATIVE
    )


def _indefinite(left: str, before: Token | None, after: Token | None) -> tuple[str, float] | None:
    """Everyone, anyone, someone as subject or before "else"; not "every one of them"."""
    if after is None or (before is not None and before.text.lower() in ("single", "last")):
        return None
    if after.text.lower() in ("else", "else's") or after.pos in ("VERB", "AUX"):
        return f"{left}one", 0.8 if after.text.lower() == "else" else 0.65
    return None


def _is_perhaps(tokens: Sequence[Token], at: int) -> bool:
    """Whether "may be" is the adverb: no subject goes before it, and one comes after."""
    before = tokens[at - 1] if at else None
    after = tokens[at + 2] if at + 2 < len(tokens) else None
    if after is None:
        return False
    opens = before is None or before.text in _BREAKS
    linked = opens or (before is not None and before.text.lower() in _LINKS)
    if after.text.lower() in _NOMINATIVE:
        return linked
    if after.text.lower() in _EITHER_CASE:
        then = tokens[at + 3] if at + 3 < len(tokens) else None
        return linked and then is not None and then.tag in ("MD", "VBZ", "VBP", "VBD")
    return (
        opens and (before is None or before.text != ",") and after.pos in ("DET", "PROPN", "PRON")
    )
