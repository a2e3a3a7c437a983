"""Slips of grammar: a verb, a noun or a participle in a form that can't stand where it stands.

A place where the other form may stand as well is left out: wishes, collective nouns, "as it were".
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from proofkit.analysis import Analysis
from proofkit.book import Book, Page
from proofkit.words.dictionary import dictionary
from proofkit.words.forms import (
    irregular_verbs,
    participle_by_past,
    past_by_participle,
    past_forms,
    third_person_of,
)
from proofkit.words.lists import word_set
from proofkit.words.quotations import quotations_of
from tests.bench._slips import Slip, Source, slip_at, words_of

_SWAPS = {"was": "were", "were": "was", "is": "are", "are": "is"}
_HAS = {"has": "have", "have": "has", "does": "do", "do": "does"}
# Either form may follow.
_EITHER = re.compile(
    r"\b(?:if|wish\w*|though|lest|until|let|whether|suppose|may|might|would|could|should|must)\b"
    r"|\b(?:as it|all|some|any|more|most|half|rest|none|who|what|lot|number|family|crew|crowd|couple|party|kind|sort"
    r"|to|that it|one of (?:the|those)\b.* (?:who|that)) $",
    re.IGNORECASE,
)
_SUBJECT = re.compile(r"\b(?:he|she|it|they|we|you|[A-Z][a-z]+) $")
_MANY = word_set("two three four five six seven eight nine ten many few several both these those")
_ONE = word_set("a an every each one another")
_SIBILANT = ("s", "x", "z", "ch", "sh", "y")
_PERSON = re.compile(r"\b(?:he|she|it|the [a-z]+|[A-Z][a-z]+) $", re.IGNORECASE)


def _agreement(_: Book, __: Analysis, page: Page) -> Iterator[Slip]:
    for word in words_of(page):
        before = page.prose[max(0, word.start() - 40) : word.start()]
        wrong = _SWAPS.get(word.group())
        if wrong is None and _SUBJECT.search(before):
            wrong = _HAS.get(word.group())
        if wrong and not _EITHER.search(before):
            yield slip_at(page, *word.span(), wrong)


def _third_person(_: Book, analysis: Analysis, page: Page) -> Iterator[Slip]:
    """*The hen lays* written *the hen lay*: present verbs but be, have and do, right after their subject."""
    for token in analysis.page(page.number).tokens:
        if token.tag == "VBZ" and token.text == third_person_of(token.lemma):
            before = page.prose[max(0, token.start - 40) : token.start]
            if token.lemma not in ("be", "have", "do", *past_forms()) and _PERSON.search(before):
                yield slip_at(page, token.start, token.end, token.lemma)


def _number(_: Book, analysis: Analysis, page: Page) -> Iterator[Slip]:
    tokens = analysis.page(page.number).tokens
    for at, noun in enumerate(tokens):
        near = [t.text.lower() for t in tokens[max(0, at - 2) : at]]
        if at > 1 and tokens[at - 1].tag not in ("JJ", "DT", "CD"):
            near = near[-1:]
        joined = page.prose[noun.end : noun.end + 1] in ("-", "‑", "'", "’")
        if noun.tag == "NNS" and noun.text[:-1] == noun.lemma and set(near) & _MANY:
            if not joined:
                yield slip_at(page, noun.end - 1, noun.end, "")
        elif (
            noun.tag == "NN"
            and set(near) & _ONE
            and noun.text.islower()
            and not noun.text.endswith(_SIBILANT)
            and not joined
            and (at + 1 == len(tokens) or not tokens[at + 1].tag.startswith(("NN", "JJ")))
        ):
            yield slip_at(page, noun.end, noun.end, "s")


def _changed(forms: Mapping[str, str], tag: str) -> Source:
    """Each irregular verb of that tag in its other form."""

    def source(_: Book, analysis: Analysis, page: Page) -> Iterator[Slip]:
        for token in analysis.page(page.number).tokens:
            if token.tag == tag and token.text in forms and not token.dep.startswith("aux"):
                yield slip_at(page, token.start, token.end, forms[token.text])

    return source


def _present(book: Book, analysis: Analysis, page: Page) -> Iterator[Slip]:
    """A past of the telling, right after its subject, in the present."""
    quotations, words = quotations_of(book), dictionary(analysis.english)
    plain = {past: verb.plain for verb in irregular_verbs() for past in verb.pasts}
    for token in analysis.page(page.number).tokens:
        before = page.prose[max(0, token.start - 40) : token.start]
        verb = plain.get(token.text, token.lemma)
        if (
            token.tag == "VBD"
            and token.text.islower()
            and verb not in past_forms()
            and verb not in ("be", "have", "do")
            and _PERSON.search(before)
            and words.knows(third_person_of(verb))
            and not quotations.speaks(page.number, token.start)
        ):
            yield slip_at(page, token.start, token.end, third_person_of(verb))


GRAMMAR_KINDS: Mapping[str, Source] = {
    "was/were and the like": _agreement,
    "number and noun": _number,
    "third-person s lost": _third_person,
    "participle for past": _changed({v: k for k, v in past_by_participle().items()}, "VBD"),
    "past for participle": _changed({v: k for k, v in participle_by_past().items()}, "VBN"),
    "present in a past story": _present,
}
