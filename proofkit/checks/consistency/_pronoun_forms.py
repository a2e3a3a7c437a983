"""The same pronoun for somebody else: he for she, his for her, its for his."""

from __future__ import annotations

from proofkit.analysis import Token

_ROWS = {
    "nsubj": ("he", "she", "it"),
    "poss": ("his", "her", "its"),
    "self": ("himself", "herself", "itself"),
    "owner": ("his", "hers", "its"),
    "dobj": ("him", "her", "it"),
}
_COLUMNS = ("he", "she", "it")


def in_the_other(token: Token, sex: str) -> str:
    """The word that ``token``, a pronoun, is for ``sex`` ("he", "she" or "it"), with its capital."""
    form = _ROWS[_work(token)][_COLUMNS.index(sex)]
    return form.capitalize() if token.text[0].isupper() else form


def _work(token: Token) -> str:
    word = token.text.lower()
    if word.endswith("self"):
        return "self"
    if word in ("he", "she"):
        return "nsubj"
    if word == "hers" or (word == "his" and token.tag != "PRP$"):
        return "owner"
    if word in ("his", "its") or (word == "her" and token.tag == "PRP$"):
        return "poss"
    if word == "it" and token.dep in ("nsubj", "nsubjpass"):
        return "nsubj"
    return "dobj"
