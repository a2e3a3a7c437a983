"""Whether a subject is one or many: by its form, not by the model's tag.

Where the grammar or the reading leaves any choice the answer is None: collective nouns may take either
verb, "Three Bears" may be a title, a list may have been taken apart.
"""

from __future__ import annotations

from collections.abc import Sequence
from enum import Enum

from proofkit.analysis import Token
from proofkit.checks.grammar._clauses import phrase_start
from proofkit.words.dictionary import Dictionary
from proofkit.words.forms import has_one_form, is_measure, singular_of
from proofkit.words.lists import word_set


class Number(Enum):
    """How many the subject is; I and YOU have verbs of their own."""

    ONE = "one"
    MANY = "many"
    SPEAKER = "I"


_ONE = word_set("""
he she it everyone everybody someone somebody anyone anybody nobody everything something anything nothing
""")
_MANY = word_set("they we you these those people police cattle others")
# Nouns that may take either verb, and words that are more than nouns.
_FREE = word_set("""
family team crowd class group pair couple band herd flock crew army party audience staff government
company gang tribe council court majority minority lot number rest half variety range folk bunch heap
pile swarm pack pride litter brood shoal school choir orchestra committee village town household enemy
kind sort type dozen hundred thousand score none all some any most more enough part plenty each
either neither both many few several other another one old young rich poor blind dead sick brave what
which who whoever whatever there here home navy set host row string chain line bit percent remainder trio
quartet royal nobility clergy youth whole twosome threesome such same first last next best worst pick
couple troop troupe fleet nation public press team mob throng procession population audience rest
""")
_DETERMINED_ONE = word_set("a an each every this that one another")
_DETERMINED_MANY = word_set(
    "these those both many few several two three four five six seven eight nine ten"
)
_MEASURES = word_set("""
mile miles minute minutes hour hours day days week weeks month months year years pound pounds penny pence
dollars dollar cents metres meters feet inches kilometres kilometers seconds times pints cups spoonfuls
thousands hundreds
""")
_PRONOUNS = {
    **dict.fromkeys(_ONE, Number.ONE),
    **dict.fromkeys(_MANY, Number.MANY),
    "i": Number.SPEAKER,
}
# Two of these are two, even with one article: "the first man and woman".
_PERSONS = word_set("""
man woman boy girl king queen mother father brother sister husband wife prince princess son daughter uncle
aunt grandmother grandfather grandma grandpa mum dad mummy daddy cat dog fox hen cow goat sheep mouse lion
""")
_AMOUNTS = word_set("lot couple number")
_FINITE = frozenset({"VBD", "VBZ", "VBP", "MD"})
_NAMELIKE = frozenset({"NNP", "NNPS", "NN", "NNS", "JJ", "UH"})


def number_of(tokens: Sequence[Token], subject: int, verb: int, words: Dictionary) -> Number | None:
    """Whether the subject is one or many, or None where there is any doubt."""
    token = tokens[subject]
    word = token.text.lower()
    if verb > subject + 1 and any(t.tag == "POS" for t in tokens[subject + 1 : verb]):
        return None
    end = next((i for i in range(subject + 1, verb) if tokens[i].tag in _FINITE), verb)
    ands = [t.text.lower() for t in tokens[subject + 1 : end] if t.tag == "CC"]
    if ands:
        return _joined(tokens, subject, end, words) if ands == ["and"] else None
    if word in _PRONOUNS or word in ("this", "that"):
        return _PRONOUNS.get(word, Number.ONE)
    if word in ("one", *_AMOUNTS) and subject + 1 < verb and tokens[subject + 1].text == "of":
        return _of_part(tokens, subject, verb, words)
    return _of_word(tokens, subject, words)


def _of_word(tokens: Sequence[Token], subject: int, words: Dictionary) -> Number | None:
    word = tokens[subject].text
    if word == "one" and subject and tokens[subject - 1].text.lower() in ("no", "every"):
        return Number.ONE
    if word.lower() in _FREE or word.lower() in _MEASURES or not word.isalpha():
        return None
    if word[0].isupper() and not _opens_with_plural(tokens, subject, words):
        return _of_name(tokens, subject, words)
    return _of_noun(tokens, subject, words)


def _opens_with_plural(tokens: Sequence[Token], at: int, words: Dictionary) -> bool:
    """Whether the capital is a sentence's, or a kind's: *Dogs was*, *the other Crows was*."""
    before = tokens[at - 1].text.lower() if at else "."
    first = before in '.!?"”“' or before in ("these", "those", "other", "all", "both")
    return (
        first
        and tokens[at].tag == "NNS"
        and singular_of(tokens[at].text.lower(), words) is not None
    )


def _of_part(tokens: Sequence[Token], subject: int, verb: int, words: Dictionary) -> Number | None:
    """Of a part of many: *one of the boys* is one; *a lot of boys* are many."""
    many = any(
        (token.tag == "NNS" and singular_of(token.text, words))
        or token.text in ("them", "us", "these", "those")
        for token in tokens[subject + 2 : verb]
    )
    if tokens[subject].text.lower() == "one":
        return Number.ONE if many else None
    a = subject > 0 and tokens[subject - 1].text.lower() == "a"
    return Number.MANY if a and many else None


def _joined(tokens: Sequence[Token], subject: int, verb: int, words: Dictionary) -> Number | None:
    """Two that are joined by "and": many, but for "bread and butter" and "every man and woman"."""
    middle = next(i for i in range(subject + 1, verb) if tokens[i].tag == "CC")
    others = [
        i for i in range(middle + 1, verb) if tokens[i].dep == "conj" and tokens[i].head == subject
    ]
    parted = any(token.tag == "IN" for token in tokens[subject:middle])
    if len(others) != 1 or parted or middle - subject > 5:
        return None
    pair = (subject, others[0])
    if any(tokens[i].tag not in ("NN", "NNS", "NNP", "PRP", "NNPS") for i in pair):
        return None
    first = phrase_start(tokens, subject)
    if tokens[first].text.lower() in ("every", "each", "no", "any", "either", "neither"):
        return None
    couple = {tokens[i].text.lower() for i in pair}
    if couple <= _PERSONS:
        return Number.MANY
    plural = any(singular_of(tokens[i].text.lower(), words) for i in pair)
    own = [phrase_start(tokens, i) < i or tokens[i].tag in ("NNP", "PRP") or i == 0 for i in pair]
    return Number.MANY if plural or all(own) else None


def _of_name(tokens: Sequence[Token], subject: int, words: Dictionary) -> Number | None:
    """A name is one by its capital; "the Smiths", "the English" and names that end in s are left alone."""
    before = tokens[phrase_start(tokens, subject)].text.lower()
    word = tokens[subject].text
    plural = singular_of(word.lower(), words) is not None
    if before == "the" and (plural or not words.knows(word.lower())):
        return None  # "the Oxen", "the Sioux"
    if word.endswith(("sh", "ch", "ese")) or (word.endswith("s") and not word.endswith("ss")):
        return None
    if word.isupper() or has_one_form(word.lower()):
        return None
    if tokens[subject].tag not in _NAMELIKE or before in ("these", "those", "all", "both"):
        return None
    return Number.ONE if word.lower() not in _FREE else None


def _of_noun(tokens: Sequence[Token], subject: int, words: Dictionary) -> Number | None:
    noun = tokens[subject].text
    first = phrase_start(tokens, subject)
    determiner = tokens[first].text.lower() if first < subject else ""
    many = singular_of(noun.lower(), words) is not None
    if has_one_form(noun) and not (is_measure(noun) and determiner in ("the", "a", "his", "her")):
        if determiner in _DETERMINED_ONE:
            return Number.ONE
        return Number.MANY if determiner in _DETERMINED_MANY else None
    if many:
        titled = any(
            token.text[0].isupper() and token.tag != "NNP" for token in tokens[first + 1 : subject]
        )
        return None if titled or determiner in _DETERMINED_ONE else Number.MANY
    if tokens[subject].tag not in ("NN", "NNS", "NNP") or not words.knows(noun):
        return None
    if noun.endswith("s") and not noun.endswith("ss"):
        return None
    return Number.ONE if determiner not in _DETERMINED_MANY else None
