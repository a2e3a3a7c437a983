"""The subject of a verb, where it stands before the verb."""

from __future__ import annotations

from collections.abc import Sequence

from proofkit.analysis import Token
from proofkit.checks.grammar._clauses import clause_before, last_of_list, opens_clause, phrase_start
from proofkit.checks.grammar._far_subjects import far_subject
from proofkit.words.lists import word_set

_BETWEEN = frozenset(
    "IN TO DT PDT PRP$ JJ JJR JJS NN NNS NNP NNPS CD POS RB RBR VBN VBG HYPH RP CC PRP".split()
)
_SUBJECTS = ("nsubj", "nsubjpass")
_NOMINATIVES = frozenset({"he", "she", "they", "we", "I"})
_PLACING = word_set(
    "in inside on upon under above below behind beside beneath within outside near among"
)
_WANDERING = word_set(
    "never always also only still just ever really often soon already now certainly"
)
_RELATIVES = frozenset({"who", "which", "that"})


def subject_of(tokens: Sequence[Token], at: int) -> int | None:
    """The place of the word that is the subject of the verb at ``at``, if it stands before the verb.

    None if there is none, or where another reading is near. For a relative pronoun it is the word just
    before that.
    """
    pronoun = _pronoun(tokens, at)
    if pronoun is not None:
        return pronoun
    verbs = {at}
    if tokens[at].dep.startswith("aux"):
        verbs.add(tokens[at].head)
    for place in range(at - 1, max(-1, at - 14), -1):
        token = tokens[place]
        if token.head in verbs and token.dep in _SUBJECTS:
            return _antecedent(tokens, place) if token.text in _RELATIVES else _sure(tokens, place)
        if token.tag not in _BETWEEN:
            break
    near = _beside(tokens, at)
    return far_subject(tokens, at) if near is None else near


def _pronoun(tokens: Sequence[Token], at: int) -> int | None:
    """The pronoun right before the verb, or an adverb from it, where it can only be the subject."""
    place = at - 1
    while place > 0 and tokens[place].text.lower() in _WANDERING:
        place -= 1
    if place < 0:
        return None
    word = tokens[place].text
    before = tokens[place - 1].text.lower() if place else "."
    if before in ("and", "or", "nor") and last_of_list(tokens, place):
        return None
    if word in _NOMINATIVES or word in ("He", "She", "They", "We"):
        return place
    if word.lower() not in ("it", "you", "this", "these", "those", "that"):
        return None
    if word.lower() == "that" and (before == "and" or (place and tokens[place - 1].lemma == "so")):
        return None
    opens = opens_clause(tokens, place) or (before == "," and word.lower() in ("it", "you", "this"))
    clause = before == "for" and place > 1 and tokens[place - 2].text[0] in ",;—–"
    return place if opens or clause else None


def _sure(tokens: Sequence[Token], subject: int) -> int | None:
    """The subject, unless it hangs on a preposition or is itself a deed: *lending ears was*."""
    first = phrase_start(tokens, subject)
    hangs = first > 0 and (
        tokens[first - 1].text.lower() in _PLACING
        or (
            tokens[first - 1].dep == "prep"
            and tokens[first - 1].text.lower() != "as"
            and not (
                tokens[first - 1].text == "for" and first > 1 and tokens[first - 2].text[0] in ",;"
            )
        )
    )
    return None if hangs or _is_deed(tokens[first]) else subject


def _is_deed(token: Token) -> bool:
    return token.tag == "VBG" or token.text.lower().endswith("ing")


def _antecedent(tokens: Sequence[Token], relative: int) -> int | None:
    """What *who* or *that* stands for, where that is plain: a noun just before, or several alike."""
    noun = relative - 1
    parted = noun > 0 and tokens[noun].text in (",", "--", "—", "–")
    noun -= parted
    if noun < 0 or tokens[noun].tag not in ("NN", "NNS", "NNP"):
        return None
    many = tokens[noun].tag == "NNS"
    if parted and many and tokens[relative].text == "which":
        return None  # it may stand for all that was said: "he shook his ears, which was rude"
    first = phrase_start(tokens, noun)
    before = tokens[first - 1].text.lower() if first else ""
    if before == "of":
        whole = tokens[first - 2].tag if first > 1 else ""
        return noun if whole == tokens[noun].tag and whole in ("NN", "NNS") else None
    joined = before in ("and", "or", "nor", ",", "than", "but")
    if parted and first and tokens[first - 1].tag == "IN":
        joined = joined or not _all_alike(tokens, relative, many=many)
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
    first = phrase_start(tokens, place)
    determined = first < place and tokens[first].tag in ("DT", "PRP$")
    if tokens[place].tag != "NNP" and not (determined and tokens[place].tag in ("NN", "NNS")):
        return None
    return place if opens_clause(tokens, first) else None
