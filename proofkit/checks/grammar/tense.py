"""A verb in the present, in a story that is told in the past.

What it finds
    "She opened the door and looks out": one or two main verbs of a page in the present (or with will
    or can), where the book tells nearly everything in the past. What somebody says is left alone, and
    so are refrains, what is always true ("frogs like rain"), what frames a story ("This is the tale
    of", "That is why", "to this day"), its last page, and pages that stay in the present.

Why a reader minds
    In the middle of a sentence a child is taken out of "then" into "now" and back.

Example
    The fox crept to the hole. He looks inside.

Better
    The fox crept to the hole. He looked inside.

When to let it stand
    Where a scene changes into the present on purpose.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from proofkit.analysis import Analysis, Sentence, Token
from proofkit.book import Book, Page, blanked
from proofkit.checks.check import Need
from proofkit.checks.grammar._narrative import (
    narrative_of,
    repeated_sentences,
    unsure_of_speech,
)
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.dictionary import Dictionary, dictionary
from proofkit.words.forms import past_of, third_person_of
from proofkit.words.lists import word_set
from proofkit.words.quotations import Quotations, quotations_of
from proofkit.words.reporting import SAYING

NAME = "grammar/tense"
NEEDS = frozenset({Need.LANGUAGE_MODEL})

_MOST = 2  # such verbs on a page; with more, the page is in the present on purpose
_PASTS = {
    "is": "was", "are": "were", "am": "was", "has": "had", "have": "had", "does": "did", "do": "did",
    "will": "would", "can": "could", "shall": "should",
}  # fmt: skip
# What is always so, or still so.
_TIMELESS = re.compile(
    r"\b(?:today|nowadays|to this day|people say|they say|your?|called|means|moral|story|tale|whenever|sometimes"
    r"|usually|often|always|never|whoever|anyone|anybody|every (?:day|night|year|time|morning|evening)"
    r"|once (?:a|every)|each (?:day|night|year|time|spring|summer|autumn|winter))\b",
    re.IGNORECASE,
)
# Before the verb: what points at the story from outside it, and what opens a thought or a notice.
_FRAME = re.compile(
    r"\b(?:this|that|these|those|here|why|how|now|still|since|ever|thought|wondered|wrote|read|sign|letter|note"
    r"|knew|believed|hoped|wished|sang|sung|dreamt|dreamed|rule|song|remembered|it is|it’s|it's)\b|:",
    re.IGNORECASE,
)
_STATES = word_set("is are has have does do can will lives live likes like loves love knows know")
_FIRST_PERSON = re.compile(r"\b(?:I|[Mm]y|[Ww]e|[Oo]ur|me|us)\b")
_TELLER = word_set("i we you me us")
_SUBJECTS = ("nsubj", "nsubjpass")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one query for each page with a stray present."""
    narrative = narrative_of(book, analysis)
    if not narrative.told_in_past:
        return
    words, quotations = dictionary(analysis.english), quotations_of(book)
    refrains = repeated_sentences(book, analysis)
    last = max((page.number for page in book.pages if page.prose.strip()), default=0)
    for page, verbs in zip(book.pages, narrative.pages, strict=True):
        tokens = analysis.page(page.number).tokens
        if page.number == last or not 0 < len(verbs.present) <= _MOST or _in_lines(page):
            continue
        told = _without_speech(page, quotations)
        found = []
        for at in verbs.present:
            sentence = next(
                s for s in analysis.page(page.number).sentences if s.first <= at < s.last
            )
            if page.prose[sentence.start : sentence.end].lower() in refrains:
                continue
            if _reports(tokens, at) or (
                len(verbs.past) >= len(verbs.present)
                and _strays(tokens, at)
                and not _excused(page, tokens, at, sentence, told)
            ):
                found.append(tokens[at])
        if found and not unsure_of_speech(page, quotations):
            yield _issue(book, page, found, words)


def _reports(tokens: Sequence[Token], at: int) -> bool:
    """Whether the verb says who speaks, right after a speech: *”, says the fox*."""
    if tokens[at].tag != "VBZ" or tokens[at].text not in SAYING:
        return False
    return any(token.text[0] in "\"”’'" for token in tokens[max(0, at - 3) : at])


def _issue(book: Book, page: Page, found: Sequence[Token], words: Dictionary) -> Issue:
    spans = [page.span(token.start, token.end) for token in found]
    past = _past(found[0], words)
    return issue_at(
        book,
        spans[0],
        check=NAME,
        tier=Tier.QUERY,
        message="in the present, while the story is told in the past",
        confidence=0.5,
        suggestions=[past] if past else [],
        related=spans[1:],
    )


def _in_lines(page: Page) -> bool:
    return "\n" in page.prose.strip().replace("\n\n", " ")


def _strays(tokens: Sequence[Token], at: int) -> bool:
    """Whether the verb is that of a main clause, and has a subject of the story's own before it."""
    verb = tokens[at]
    main = tokens[verb.head] if verb.dep.startswith("aux") else verb
    if not _leads(tokens, main):
        return False
    heads = {verb, main}
    subject = next(
        (
            place
            for place in range(at - 1, max(-1, at - 10), -1)
            if tokens[place].dep in _SUBJECTS and tokens[tokens[place].head] in heads
        ),
        None,
    )
    if subject is None:
        return main.dep == "conj" and verb.tag == "VBZ"
    return _of_the_story(tokens, subject)


def _leads(tokens: Sequence[Token], verb: Token) -> bool:
    """Whether the verb is its sentence's first, or joined to that by "and" alone."""
    for _ in range(4):
        if verb.dep == "ROOT":
            return True
        if verb.dep != "conj":
            return False
        verb = tokens[verb.head]
    return False


def _of_the_story(tokens: Sequence[Token], subject: int) -> bool:
    """Whether the subject is a certain one: not "a frog", not "frogs", not the one who tells."""
    word = tokens[subject].text.lower()
    if word in _TELLER or word in ("there", "who", "what", "which"):
        return False
    if tokens[subject].tag in ("PRP", "NNP"):
        return tokens[subject].tag == "PRP" or not word.endswith("s")
    determiners = {
        tokens[place].text.lower()
        for place in range(max(0, subject - 4), subject)
        if tokens[place].tag in ("DT", "PRP$", "POS") and tokens[place].head == subject
    }
    return bool(determiners) and not determiners & {"a", "an", "no", "every", "each", "some", "any"}


def _excused(page: Page, tokens: Sequence[Token], at: int, sentence: Sentence, spoken: str) -> bool:
    """Whether the sentence is a question, a truth for all times, a frame or a thought.

    ``spoken`` is the page with all speech blanked out.
    """
    text = spoken[sentence.start : sentence.end]
    before = spoken[sentence.start : tokens[at].start]
    about_self = tokens[at].text.lower() in _STATES and _FIRST_PERSON.search(text)
    return (
        text.rstrip("”’\"' ").endswith("?")
        or bool(_TIMELESS.search(text))
        or bool(_FRAME.search(before + tokens[at].text))
        or _in_brackets(spoken, tokens[at].start)
        or bool(about_self)
        or spoken[: sentence.start].rstrip().endswith(":")
    )


def _in_brackets(text: str, at: int) -> bool:
    return text.count("(", 0, at) > text.count(")", 0, at)


def _without_speech(page: Page, quotations: Quotations) -> str:
    spoken = [(s.start, s.end) for s in quotations.spoken if s.page == page.number]
    return blanked(page.prose, tuple(spoken))


def _past(verb: Token, words: Dictionary) -> str | None:
    text = verb.text.lower()
    if text in _PASTS:
        return _PASTS[text] if verb.text.islower() else None
    plain = verb.lemma.lower()
    if text not in (plain, third_person_of(plain)) or not verb.text.islower():
        return None
    past = past_of(plain)
    return past if words.knows(past) else None
