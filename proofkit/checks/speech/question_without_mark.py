"""A spoken question without its question mark.

What it finds
    Speech that asks by its word order (*Where is*, *Can you*, *Do they*) and ends with a full stop, or with a
    comma before *asked*.

Why a reader minds
    The voice has to rise, and there is nothing to tell it so.

Example
    "Where is my hat," asked the bear.

Better
    "Where is my hat?" asked the bear.

When to let it stand
    In a request that is an order in disguise (*Will you be quiet.*).
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.sentences._questions import asks_what
from proofkit.checks.speech._seams import Seam, last_word_start, seams
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings

NAME = "speech/question-without-mark"
NEEDS = frozenset({Need.TEXT})

_SUBJECT = r"(?:you|he|she|it|they|we|I|that|this|there|the|my|your|his|her|our|their|anyone|anybody|someone)"
_ASKS = re.compile(
    rf"(?:(?:So|And|But|Oh|Well|Please|Mum|Dad|Mama|Papa),? )?"
    rf"(?:(?:Where|Why|How|When|What|Who|Which \w+) (?:is|are|was|were|do|does|did|can|could|will|would|shall|should|have|has|am) {_SUBJECT}"
    rf"|Who could (?:that|it|this)|Who (?:is|was|are) (?:it|there|that|this|you|she|he)"
    rf"|(?:Do|Does|Did|Can|Could|Is|Are|Was|Have|Has|Am|Shall|Will|Would) (?:you|he|she|it|they|we|I)) ",
    re.IGNORECASE,
)
_NOT_ASKED = re.compile(
    r"(?:do you know|how do you do|would you believe|will you|would you|could you|have it|was it not)\b",
    re.IGNORECASE,
)
_LAST_SENTENCE = re.compile(r"(?:^|[.!?…]\s+)(?P<sentence>[^.!?…]+)[.,]\s*$")
_ASKING = re.compile(r"\s+(?:[\w'’-]+\s+){0,4}?(?:asks?|asked|wondere?d?s?|inquired|enquired)\b")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield each speech that asks and has no question mark."""
    for seam in seams(book):
        match = _LAST_SENTENCE.search(seam.inner)
        if (
            match is None
            or not _ASKS.match(match["sentence"])
            or _NOT_ASKED.match(match["sentence"])
        ):
            continue
        asked = _ASKING.match(seam.after) is not None
        if "," in match["sentence"] or (seam.inner.rstrip()[-1] == "," and not asked):
            continue
        yield _issue(book, seam, sure=asked or asks_what(match["sentence"].strip()))


def _issue(book: Book, seam: Seam, *, sure: bool) -> Issue:
    page, mark = book.page(seam.closing.span.page), seam.closing.span
    start = last_word_start(page, mark.start)
    word = page.prose[start : mark.start].rstrip()[:-1]
    return issue_at(
        book,
        page.span(start, mark.end),
        check=NAME,
        tier=Tier.ERROR if sure else Tier.QUERY,
        message="a question without a question mark",
        suggestions=[f"{word}?{seam.closing.text}"],
        confidence=0.85 if sure else 0.6,
    )
