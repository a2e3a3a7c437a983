"""Simpler words for a word where it stands: of the same sense, part of speech and form.

``wordlists/thesaurus.tsv`` says which words may stand for a word and how likely each is to mean the
same, the word's most frequent sense weighing most. What the words around would rather have, by counts
of runs of words in children's novels, is the second vote, and how simple the other word is the third.
For some five hundred words of children's fiction our own list, ``simpler-words.txt``, comes first.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from functools import lru_cache
from math import log

from proofkit.analysis import Token
from proofkit.reading.known_words import KnownWords
from proofkit.reading.same_form import in_form
from proofkit.settings import English
from proofkit.words.context.model import context_model
from proofkit.words.context.tokens import REACH, tokens_of
from proofkit.words.data import wordlist
from proofkit.words.frequency import zipf
from proofkit.words.variants import variants

_PLAIN = {"NOUN": "NN", "VERB": "VB", "ADJ": "JJ", "ADV": "RB"}
_LETTERS = {"NOUN": "n", "VERB": "v", "ADJ": "a", "ADV": "r"}
# The weights of the three votes, and how far below the best another may fall.
_RUNS, _FREQUENCY = 0.12, 0.4
_MOST_RUNS = 6.0  # natural log that the words around may take away
_BEHIND = 0.9
# Of what scores less, hardly every second word fits (read in sixty-eight books); of what scores more,
# some seven in ten.
_LEAST = -1.9
_MOST_WORDS = 3


def simpler_words(
    token: Token,
    text: str,
    english: English,
    known: KnownWords,
    *,
    most: int = _MOST_WORDS,
) -> tuple[str, ...]:
    """The simpler words that fit in the token's place in ``text``, the best first; often none.

    They are spelt as ``english`` spells them. ``known`` says what the reader knows.
    """
    for reading in _readings(token):
        found = list(_own_forms(reading, known)) or _weighed_forms(reading, text, known)
        spelt = dict.fromkeys(variants().in_english(form, english) or form for form in found)
        simpler = [form for form in spelt if form not in _spellings(token.text.lower())]
        if simpler:
            return tuple(simpler[:most])
    return ()


def _own_forms(reading: Token, known: KnownWords) -> Iterator[str]:
    """What our own list has for the word, in its form."""
    for other in own_words().get((reading.lemma.lower(), _LETTERS.get(reading.pos, "")), ()):
        form = in_form(other, reading.tag)
        if form and known.knows(other):
            yield form


def _weighed_forms(reading: Token, text: str, known: KnownWords) -> list[str]:
    """What the thesaurus has for it, as far as the three votes together are for it; the best first."""
    weighed = thesaurus().get((reading.lemma.lower(), _LETTERS.get(reading.pos, "")), {})
    simple = {other: weight for other, weight in weighed.items() if known.knows_itself(other)}
    scores = dict(_scores(reading, text, simple))
    enough = max(_LEAST, max(scores.values(), default=0.0) - _BEHIND)
    best = sorted(scores, key=lambda form: -scores[form])
    return [form for form in best if scores[form] > enough]


def _spellings(word: str) -> tuple[str, ...]:
    """The word in both Englishes: meters is no simpler word for metres."""
    found = (variants().in_english(word, english) for english in English)
    return word, *(spelt for spelt in found if spelt)


def _readings(token: Token) -> Iterator[Token]:
    """What the word may be there: as tagged, and after that, where the tag may err, what it looks like.

    A participle may be an adjective (*was exhausted*), a past may be taken for a present (*leapt*), and
    what is written in lower case is no name.
    """
    word = token.text.lower()
    if token.pos == "PROPN" and token.text.islower():
        kinds = [pos for pos, letter in _LETTERS.items() if _has(word, letter)]
        if token.dep == "compound" and "ADJ" in kinds:  # before the noun that it describes
            kinds = ["ADJ"]
        if len(kinds) == 1:
            yield replace(token, pos=kinds[0], tag=_PLAIN[kinds[0]], lemma=word)
        return
    if token.tag == "VBZ" and not word.endswith("s"):
        yield replace(token, tag="VBD")
        return
    yield token
    if token.tag in ("VBN", "VBG") and _has(word, "a"):
        yield replace(token, pos="ADJ", tag="JJ", lemma=word)


def _has(word: str, letter: str) -> bool:
    return (word, letter) in thesaurus() or (word, letter) in own_words()


def _scores(token: Token, text: str, weighed: Mapping[str, int]) -> Iterator[tuple[str, float]]:
    forms = {other: in_form(other, token.tag) for other in weighed}
    wanted = [form for form in forms.values() if form]
    runs = dict(zip(wanted, _runs(token, text, wanted), strict=True))
    for other, form in forms.items():
        sense = log(weighed[other] / 100)
        if form:
            simpler = _FREQUENCY * (zipf(other) - zipf(token.lemma))
            yield form, sense + _RUNS * runs[form] + simpler


def _runs(token: Token, text: str, forms: Sequence[str]) -> list[float]:
    """How much worse each form fits its neighbours than the one that fits best, as natural logs."""
    model = context_model()
    tokens = tokens_of(text, str.istitle, max(0, token.start - 80), min(len(text), token.end + 80))
    try:
        at = tokens.starts.index(token.start, REACH)
    except ValueError:  # the word is part of a longer one there
        return [0.0] * len(forms)
    words = model.classed(tokens.words)[at - 3 : at + 4]

    def fit(form: str) -> float:
        # How common the form is by itself is the third vote's matter.
        share = model.counts.count(form) or 1.0
        placed = [*words[:3], form, *words[4:]]
        return model.counts.log_likelihood(placed, 3) - log(share)

    fits = [fit(form) for form in forms]
    return [max(-_MOST_RUNS, found - max(fits)) for found in fits]


@lru_cache(maxsize=1)
def own_words() -> Mapping[tuple[str, str], tuple[str, ...]]:
    """Our own simpler words of a word and part of speech, the likeliest first."""
    lines = wordlist("simpler-words.txt").read_text("utf-8").splitlines()
    rows = (line.split() for line in lines if line and not line.startswith("#"))
    return {(word, letter): tuple(others) for word, letter, *others in rows}


@lru_cache(maxsize=1)
def thesaurus() -> Mapping[tuple[str, str], Mapping[str, int]]:
    """The simpler words of each word and part of speech (n, v, a, r), with weights from 1 to 99."""
    found = {}
    for line in wordlist("thesaurus.tsv").read_text("utf-8").splitlines():
        if not line.startswith("#"):
            word, letter, others = line.split("\t")
            pairs = (pair.split(":") for pair in others.split())
            found[word, letter] = {other: int(weight) for other, weight in pairs}
    return found
