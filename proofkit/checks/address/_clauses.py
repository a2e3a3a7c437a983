"""Whether a clause is complete, so that a name after it can only be the one who is spoken to.

"I saw Tilly" wants its object, "Where are you going" wants nothing more. Judged by the clause's last
word and by what its first words have asked for; tags are taken from the words before the name alone.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from proofkit.analysis import Token
from proofkit.checks.address._clause_words import (
    ADVERBS,
    DEED,
    DEGREES,
    DETERMINERS,
    ENTERS,
    EPITHETS,
    IN,
    LINKS,
    MOVES,
    NAMED_NOUNS,
    NAMING_NOUNS,
    OWN,
    PARTICLES,
    PERSONS,
    PRONOUNS,
    SOME,
    SPEAKER,
    THINGS,
    WITHOUT_OBJECT,
)
from proofkit.checks.address._spoken_to import Kind

_NAMING = re.compile(
    r"\b(?:call|christen|label|term)(?:s|ed|d|ing)?(?: \w+)?$|\bnam(?:e|es|ed|ing) (?:me|him|her|it|them|us|you)$|\bnamed$|\bsp(?:ell|elt|elled|ells) (?:it|that)$|\blong live$"
)
_GIVES = (
    r"\b(?:give|gave|given|giving|bring|brought|show|showed|find|found|make|made|sell|sold|send|sent|wed|marry"
    r"|buy|bought|lend|hand|pass|fetch|owe)s?"
)
_GIVING = re.compile(rf"{_GIVES} \w+$|\bi promise$")
_GIVING_SOMEONE = re.compile(rf"{_GIVES} (?:\w+ )+")
# "Are you Ben?", "It is now Ben…": the name says who somebody is.
_WHO_IS = re.compile(
    r"(?:^|\b(?:and|but|so|then|oh|why) )(?:are|were|is|was|am) (?:you|it|this|that|there|here|i|he|she)$"
    r"|\b(?:is|was|it['’]s|here['’]s|that['’]s|there['’]s|where['’]s|who['’]s|are|were) (?:now|then|here|there|only|just|really|too|called|not|still|also)$"
    r"|\b(?:that|it|this|there|who|he|she)['’]s$"
)
_QUESTION = re.compile(
    r"^(?:(?:and|but|so|then|oh|well|now|please|why) )?(what|which|who|whom|whose|where|why|how|when)\b(.*)$"
)
_SUBJECT = re.compile(r"\b(?:you|we|i|he|she|it|they|your|my|our|the|this|that|these|those)\b")
_JOINS_ON = ("-", "‑", "'", "‘", "’", '"', "“")
# "What are you looking at (Ben)?", where "What did you say to (Ben)?" wants its name.
_OPEN_PREPOSITION = re.compile(
    r"\b(?:(?:look|star|laugh|point|shout|peer|smil)\w* at|(?:look|wait|cry|ask)\w* for|(?:talk|think|cry|laugh|worry)\w* (?:about|of)"
    r"|(?:come|came|coming) from)$"
)
_YOU_ARE = re.compile(
    r"\b(?:you|i|we)(?:['’](?:re|m)| (?:are|am|were|look|feel)) (?:\w+ ){0,2}\w+$"
)
# "That's what we'll do": the object came first.
_WHAT_WE_DO = re.compile(
    r"\b(?:what|whatever|all|everything) (?:you|we|i|he|she|they|it)\S*(?: \w+)* \w+$"
)
# "I know where it is", "tell me who you are": the question inside has all it needs.
_WHERE_IT_IS = re.compile(
    r"\b(?:where|what|who|how) (?:it|he|she|they|you|we|i)(?: (?:is|are|was|were|am|do|did|can)|['’](?:s|re))$"
)
# After these only a verb could follow: "I can't Mum!"
_I_CANT = re.compile(
    r"\b(?:i|you|we|they|he|she|it) (?:can|won|don|shan|mustn|couldn|wouldn|shouldn|didn|doesn|haven|hasn)['’]t$|\bcannot$"
)
# Nor can a name be the verb that these wait for: "We may Polly", "if you want to Polly".
_I_CAN = re.compile(
    r"^(?!as |when |if |before |until |since |while ).*\b(?:i|you|we|they|he|she|it)(?:['’]d)?(?: \w+ly| do| always| never)? (?:can|may|will|must|should|could|would|might|shall"
    r"|(?:want|wants|wanted|ought|need|needs|have|like|love) to)$"
    r"|\b(?:can|won|don|couldn|wouldn|shouldn|didn|mustn)['’]t(?: really)?$|\breally can['’]t$"
)
_DONT_KNOW = re.compile(r"\bi (?:don['’]t|do not) know$")


def is_complete(tokens: Sequence[Token], kind: Kind) -> bool:
    """Whether the clause wants nothing more, so that what follows is no object or complement of it."""
    words = [token.text.lower() for token in tokens]
    if len(words) < 2 or _describes(words) or not any(t.pos in ("VERB", "AUX") for t in tokens):
        return False
    clause = _joined(tokens)
    if _WHO_IS.search(clause) or _NAMING.search(clause):
        return False
    if asked := _QUESTION.match(clause):
        return _answers(asked[1], asked[2], tokens, kind)
    small = _ends_in_small_word(words, clause, kind)
    return _ends_in_full_word(tokens, clause, kind) if small is None else small


def _ends_in_full_word(tokens: Sequence[Token], clause: str, kind: Kind) -> bool:
    """Whether a verb without object, an adjective or a noun ends the clause well."""
    words = [token.text.lower() for token in tokens]
    if words[-1] in WITHOUT_OBJECT or (tokens[-1].tag == "RB" and words[-1].endswith("ly")):
        return words[-1] not in ("mean", "been") and tokens[-2].pos != "ADJ"  # good-looking
    if _WHERE_IT_IS.search(clause) or _I_CANT.search(clause) or _I_CAN.search(clause):
        return True
    if kind is not Kind.NAME and _DONT_KNOW.search(clause):
        return True
    if (
        _WHAT_WE_DO.search(clause)
        and tokens[-1].pos in ("VERB", "AUX")
        and tokens[-1].lemma != "be"
    ):
        return True
    addressed = not SPEAKER.isdisjoint(words) or kind is not Kind.NAME
    return _ends_in_adjective(tokens, kind) or (addressed and _ends_in_noun(tokens, kind))


def _describes(words: Sequence[str]) -> bool:
    """No girls, such twins, fine-looking boys, "best friends", this here lady, the LATE Captain."""
    return (
        words[-1] in ("no", "such", "a", "an", "the")
        or words[-2] in _JOINS_ON
        or words[-2:] in (["this", "here"], ["that", "there"])
    )


def _ends_in_small_word(words: Sequence[str], clause: str, kind: Kind) -> bool | None:
    """Whether a pronoun, adverb or particle ends the clause well; None where none of them ends it."""
    last, before = words[-1], words[-2]
    if last in PRONOUNS:
        girls = kind is Kind.HEARERS and last in ("you", "us")  # you girls
        this = last in ("this", "that") and before not in DEED
        return not (girls or this or _GIVING.search(clause))
    if last in ADVERBS:
        return before not in DETERMINERS  # his late uncle
    if last in IN:
        return before in ENTERS or words[-3:-1] in (["let", "me"], ["let", "us"])
    if last in PARTICLES:
        return before in MOVES or before in PRONOUNS
    if last == "so":
        return before in ("think", "hope", "say", "said", "suppose", "guess", "told")
    return None


def _answers(asked: str, rest: str, tokens: Sequence[Token], kind: Kind) -> bool:
    """Whether a question is complete: where *what* or *who* is the object, any verb may end it."""
    words = [token.text.lower() for token in tokens]
    if not _SUBJECT.search(rest):
        return words[-1] in ("happened", "wrong", "now", "matter", "next", "else")
    small = _ends_in_small_word(words, "", kind)
    if small is not None:
        return small
    if words[-1] in WITHOUT_OBJECT or (words[-1] == "name" and asked == "what"):
        return True
    if words[-1] in ("he", "she", "they", "we") and words[-2] in ("is", "are", "was", "were"):
        return True
    if asked in ("what", "which", "whom", "who") and (
        tokens[-1].tag in ("VB", "VBG", "VBN") or _OPEN_PREPOSITION.search(rest)
    ):
        return True
    return _ends_in_adjective(tokens, kind) or _ends_in_noun(tokens, kind)


def _ends_in_adjective(tokens: Sequence[Token], kind: Kind) -> bool:
    """You are so kind; not: you are a kind (…), it is old (Rat), be good (children)."""
    if tokens[-1].pos != "ADJ" or tokens[-1].text.isupper():
        return False
    if kind is Kind.HEARERS and not _YOU_ARE.search(_joined(tokens)):
        return False  # "be good children", "they are real children"
    near = [token.text.lower() for token in tokens[-4:-1]]
    if tokens[-1].text.lower() in EPITHETS and near[-1] not in DEGREES:
        return False
    return not LINKS.isdisjoint(near) and DETERMINERS.isdisjoint(near[-2:])


def _ends_in_noun(tokens: Sequence[Token], kind: Kind) -> bool:
    last, before = tokens[-1], tokens[-2].text.lower()
    word, lemma = last.text.lower(), last.lemma.lower()
    if last.pos != "NOUN" or not word.isalpha() or last.text[0].isupper():
        return False
    if kind is Kind.MINE:
        return _GIVING_SOMEONE.search(_joined(tokens)) is None
    # The name of one can't say who many are: "I like your shoes Ben".
    if last.tag == "NNS":
        return True
    named = NAMING_NOUNS | (NAMED_NOUNS if kind is Kind.NAME else PERSONS)
    if word in named or lemma in named:
        return False
    if kind is Kind.HEARERS:
        return before in OWN
    # A thing with its article, or after "some" and the like, bears no name: "I'd like some paste Ben".
    told = before in SOME or before in DETERMINERS or _has_article(tokens)
    return kind is Kind.KIN or word in THINGS or lemma in THINGS or told


def _has_article(tokens: Sequence[Token]) -> bool:
    """A pretty long title: "a" or "an", and nothing but describing words between."""
    for token in reversed(tokens[:-1]):
        if token.text.lower() in ("a", "an"):
            return True
        if token.pos not in ("ADJ", "ADV"):
            return False
    return False


def may_precede_sir(tokens: Sequence[Token]) -> bool:
    """Whether no article, adjective or preposition claims the "sir" that follows."""
    last = tokens[-1]
    if {"call", "say", "name", "be"} & {token.lemma for token in tokens[-2:]}:
        return False  # to say sir, to call him sir
    own = DETERMINERS - {"this", "that", "one"}
    return last.text.lower() not in own and last.pos not in ("ADJ", "ADP", "CCONJ", "DET")


def _joined(tokens: Sequence[Token]) -> str:
    text = ""
    for token, before in zip(tokens, (None, *tokens), strict=False):
        gap = " " if before is not None and token.start > before.end else ""
        text += gap + token.text.lower()
    return text
