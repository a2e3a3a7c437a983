"""Pairs of small words that are one word: him self, every where, may be."""

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
        god mother, god father, be cause, be fore, be hind, be side, be tween, be neath, with out,
        al ways, al ready, al most, al though, to gether, a gainst, a mong""",
    )
)
_PARTS_OF_BODY = frozenset({"of", "part", "parts", "found", "lay"})
_NOMINATIVE = frozenset({"i", "he", "she", "we", "they", "there"})
_DAY = frozenset(
    {"this", "that", "one", "every", "the", "an", "next", "yesterday", "tomorrow", "good"}
)
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
        if right == "body" and after is not None and after.text.lower() in _PARTS_OF_BODY:
            return None
        return left + right, 0.85
    if right == "one" and left in ("every", "any", "some"):
        each = [token.text.lower() for token in tokens[max(0, at - 2) : at]] == ["each", "and"]
        return None if each else _indefinite(left, before, after)
    if pair == "may be":
        return ("maybe", 0.85) if _is_perhaps(before, after) else None
    if pair == "after noon":
        told = before is not None and before.text.lower() in _DAY
        return ("afternoon", 0.85) if told else None
    return None


def _indefinite(left: str, before: Token | None, after: Token | None) -> tuple[str, float] | None:
    """Everyone, anyone, someone as subject or before "else"; not "every one of them"."""
    if after is None or (before is not None and before.text.lower() in ("single", "last")):
        return None
    if after.text.lower() in ("else", "else's") or after.pos in ("VERB", "AUX"):
        return f"{left}one", 0.8 if after.text.lower() == "else" else 0.65
    return None


def _is_perhaps(before: Token | None, after: Token | None) -> bool:
    """Whether "may be" is the adverb: no subject goes before it, and one comes after."""
    if after is None:
        return False
    opens = before is None or before.text in _BREAKS
    linked = opens or (before is not None and before.text.lower() in _LINKS)
    if after.text.lower() in _NOMINATIVE:
        return linked
    return (
        opens and (before is None or before.text != ",") and after.pos in ("DET", "PROPN", "PRON")
    )
