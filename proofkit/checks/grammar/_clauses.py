"""The words around a subject: where its phrase and its clause begin, and what keeps its verb bare."""

from __future__ import annotations

from collections.abc import Sequence

from proofkit.analysis import Token
from proofkit.words.lists import word_set

STOPS = frozenset('.!?:;"“”‘…—–(')

_LEFT = frozenset("DT PDT PRP$ JJ JJR JJS NN NNP CD POS VBN VBG HYPH".split())
_LEADS = frozenset({"DT", "PRP$"})
_BEFORE_ARTICLE = word_set("all both half such what quite many")
_FINITE = frozenset({"VBD", "VBZ", "VBP", "MD"})
# After these a verb stands bare: "did he have", "made the boy do", "that he have it at once".
_BARE_AFTER = word_set("""
do does did don't didn't doesn't let lets make makes made making see sees saw seen watch watched hear
hears heard feel felt help helps helped have has had having to would could should will shall can may
might must 'd 'll ’d ’ll wo ca sha let's bid bade suggest suggested insist insisted demand demanded ask
asked lest rather need dare why watching seeing hearing feeling letting helping
""")
_BEGINS = word_set("""
that when because where if while though although so and but then now whenever as what how till until since
unless perhaps maybe than
""")
# After these a clause may begin with no "that": "they thought they was safe".
_THINKING = word_set("""
think know believe say hope suppose guess tell wish feel see hear find notice mean swear imagine sure afraid
glad sorry certain
""")


def phrase_start(tokens: Sequence[Token], noun: int) -> int:
    """The place of the first word of the phrase that ends with the noun."""
    first = noun
    if tokens[noun].tag in ("PRP", "DT"):
        return noun
    while first and _belongs(tokens, first - 1):
        if tokens[first].tag in _LEADS and tokens[first - 1].text.lower() not in _BEFORE_ARTICLE:
            return first
        first -= 1
    return first


def _belongs(tokens: Sequence[Token], at: int) -> bool:
    """Whether the word can stand before the rest of a noun phrase, as "very" can before "big"."""
    if tokens[at].tag == "RB":
        return tokens[at + 1].tag in ("JJ", "JJR", "JJS", "VBN")
    return tokens[at].tag in _LEFT


def opens_clause(tokens: Sequence[Token], first: int) -> bool:
    """Whether a clause begins at ``first``: after a stop, or a word that opens one, or a verb of thinking."""
    if not first:
        return True
    before = tokens[first - 1]
    word = before.text.lower()
    return word[0] in '.!?;:"”“‘—–(' or word in _BEGINS or before.lemma in _THINKING


def clause_before(tokens: Sequence[Token], at: int) -> Sequence[Token]:
    """The words from the last stop to ``at``."""
    first = at
    while first and tokens[first - 1].text[0] not in STOPS:
        first -= 1
    return tokens[first:at]


def kept_bare(tokens: Sequence[Token], at: int) -> bool:
    """Whether a word before keeps the verb at ``at`` in its plain form: *did the goat eat*."""
    return any(token.text.lower() in _BARE_AFTER for token in clause_before(tokens, at))


def last_of_list(tokens: Sequence[Token], first: int) -> bool:
    """Whether the phrase that starts at ``first`` may be the last of several: *Goat, Dog and Cow were*.

    It is not where a clause of its own stands before the "and": *the sun shone, and the sky were*.
    """
    if not first or tokens[first - 1].text.lower() not in ("and", "or", "nor", "&"):
        return False
    place, noun = first - 2, False
    while place >= 0 and tokens[place].text[0] not in STOPS:
        if tokens[place].tag in _FINITE:
            return noun and tokens[first - 2].text != ","
        noun = noun or (
            tokens[place].tag.startswith(("NN", "PRP")) or tokens[place].text[0].isupper()
        )
        place -= 1
    return noun
