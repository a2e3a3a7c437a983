"""The subject of a verb, and whether it is one or many: by its form, not by the model's tag.

Where the grammar or the reading leaves any choice the answer is None: collective nouns may take either
verb, "Three Bears" may be a title, a list may have been taken apart.
"""

from __future__ import annotations

from collections.abc import Sequence
from enum import Enum

from proofkit.analysis import Token
from proofkit.checks.grammar._clauses import clause_before, phrase_start
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
world kind sort type dozen hundred thousand score none all some any most more enough part plenty each
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
_AMOUNTS = word_set("lot couple number")
_BETWEEN = frozenset(
    "IN TO DT PDT PRP$ JJ JJR JJS NN NNS NNP NNPS CD POS RB RBR VBN VBG HYPH RP CC PRP".split()
)
_NAMELIKE = frozenset({"NNP", "NNPS", "NN", "NNS", "JJ", "UH"})
_SUBJECTS = ("nsubj", "nsubjpass")
_NOMINATIVES = frozenset({"he", "she", "they", "we", "I"})
_BEGINS_CLAUSE = word_set("""
that when because where if while though although so and but then now whenever as what how
""")
_PLACING = word_set(
    "in inside on upon under above below behind beside beneath within outside near among"
)
_RELATIVES = frozenset({"who", "which", "that"})


def subject_of(tokens: Sequence[Token], at: int) -> int | None:
    """The place of the word that is the subject of the verb at ``at``, if it stands before the verb.

    None if there is none, or if a mark or another finite verb parts the two. For a relative pronoun
    it is the word just before that.
    """
    verbs = {at}
    if tokens[at].dep.startswith("aux"):
        verbs.add(tokens[at].head)
    for place in range(at - 1, max(-1, at - 14), -1):
        token = tokens[place]
        if token.head in verbs and token.dep in _SUBJECTS:
            return _antecedent(tokens, place) if token.text in _RELATIVES else _sure(tokens, place)
        if token.tag not in _BETWEEN:
            break
    return _beside(tokens, at)


def number_of(tokens: Sequence[Token], subject: int, verb: int, words: Dictionary) -> Number | None:
    """Whether the subject is one or many, or None where there is any doubt."""
    token = tokens[subject]
    word = token.text.lower()
    ands = [t.text.lower() for t in tokens[subject + 1 : verb] if t.tag == "CC"]
    if ands:
        return _joined(tokens, subject, verb, words) if ands == ["and"] else None
    if word in _PRONOUNS:
        return _PRONOUNS[word]
    if word in ("this", "that"):
        return Number.ONE if _opens_clause(tokens, subject) and subject == verb - 1 else None
    if word in ("one", *_AMOUNTS) and subject + 1 < verb and tokens[subject + 1].text == "of":
        return _of_part(tokens, subject, verb, words)
    return _of_word(tokens, subject, words)


def _of_word(tokens: Sequence[Token], subject: int, words: Dictionary) -> Number | None:
    word = tokens[subject].text
    if word.lower() in _FREE or word.lower() in _MEASURES or not word.isalpha():
        return None
    if word[0].isupper() and not _opens_with_plural(tokens, subject, words):
        return _of_name(tokens, subject)
    return _of_noun(tokens, subject, words)


def _sure(tokens: Sequence[Token], subject: int) -> int | None:
    """The subject, unless it hangs on a preposition or is itself a deed: *lending ears was*."""
    first = phrase_start(tokens, subject)
    hangs = first > 0 and (
        tokens[first - 1].text.lower() in _PLACING
        or (tokens[first - 1].dep == "prep" and tokens[first - 1].text.lower() != "as")
    )
    return None if hangs or _is_deed(tokens[first]) else subject


def _is_deed(token: Token) -> bool:
    return token.tag == "VBG" or token.text.lower().endswith("ing")


def _antecedent(tokens: Sequence[Token], relative: int) -> int | None:
    """What *who* or *that* stands for, where that is plain: a noun just before, no "of" about it."""
    noun = relative - 1
    if noun > 0 and tokens[noun].text == ",":
        noun -= 1
    if noun < 0 or tokens[noun].tag not in ("NN", "NNS", "NNP"):
        return None
    first = phrase_start(tokens, noun)
    before = tokens[first - 1].text.lower() if first else ""
    joined = before in ("of", "and", "or", "nor", ",", "than", "but")
    if noun < relative - 1 and first and tokens[first - 1].tag == "IN":
        joined = joined or not _all_alike(tokens, relative, many=tokens[noun].tag == "NNS")
    return None if joined else noun


def _all_alike(tokens: Sequence[Token], relative: int, *, many: bool) -> bool:
    """Whether every noun of the clause before is one, or every one many: any may be meant by *who*."""
    before = clause_before(tokens, relative - 1)
    nouns = [token for token in before if token.tag.startswith("NN")]
    return all((noun.tag == "NNS") is many for noun in nouns) and all(t.tag != "CC" for t in before)


def _beside(tokens: Sequence[Token], at: int) -> int | None:
    """The word just before the verb, where by its form or its place it can only be the subject."""
    place = at - 1
    if place > 0 and tokens[place].tag == "RB" and tokens[place].text.lower() not in ("not", "n't"):
        place -= 1
    if place < 0:
        return None
    if tokens[place].text.lower() in ("it", "this", "that"):
        return place if _opens_clause(tokens, place) else None
    if tokens[place].text in _NOMINATIVES or tokens[place].text in ("He", "She", "They", "We"):
        return place
    first = phrase_start(tokens, place)
    determined = first < place and tokens[first].tag in ("DT", "PRP$")
    if tokens[place].tag != "NNP" and not (determined and tokens[place].tag in ("NN", "NNS")):
        return None
    return place if _opens_clause(tokens, first) else None


def _opens_clause(tokens: Sequence[Token], first: int) -> bool:
    before = tokens[first - 1].text.lower() if first else "."
    return before[0] in '.!?;"”“' or before in _BEGINS_CLAUSE


def _opens_with_plural(tokens: Sequence[Token], at: int, words: Dictionary) -> bool:
    """Whether the capital is that of a sentence's first word, which is a common plural: *Dogs was*."""
    first = at == 0 or tokens[at - 1].text in '.!?"”“'
    return (
        first
        and tokens[at].tag == "NNS"
        and singular_of(tokens[at].text.lower(), words) is not None
    )


def _of_part(tokens: Sequence[Token], subject: int, verb: int, words: Dictionary) -> Number | None:
    """Of a part of many: *one of the boys* is one; *a lot of boys* are many."""
    many = any(
        token.tag == "NNS" and singular_of(token.text, words)
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
    plural = any(singular_of(tokens[i].text.lower(), words) for i in pair)
    own = [phrase_start(tokens, i) < i or tokens[i].tag in ("NNP", "PRP") or i == 0 for i in pair]
    return Number.MANY if plural or all(own) else None


def _of_name(tokens: Sequence[Token], subject: int) -> Number | None:
    """A name is one by its capital; "the Smiths", "the English" and names that end in s are left alone."""
    before = tokens[phrase_start(tokens, subject)].text.lower()
    word = tokens[subject].text
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
