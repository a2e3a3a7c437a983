"""A question that ends with a full stop.

What it finds
    A sentence of the story, or one inside a speech, that asks by its form (*Where had he gone, What are you
    doing, Did she see it*) and ends with a full stop. Questions inside other sentences (*He
    wondered where he was*), exclamations (*What a day*) and requests (*Will you sit down*) are left
    alone. The last sentence of a speech has a page of its own.

Why a reader minds
    The voice has to rise, and there is nothing to tell it so.

Example
    Where had the moon gone. Nobody knew.

Better
    Where had the moon gone? Nobody knew.

When to let it stand
    Where nobody waits for an answer and the voice should fall.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.check import Need
from proofkit.checks.sentences._questions import asks_what, asks_whether
from proofkit.checks.sentences._verse import in_verse, verse_at
from proofkit.checks.spacing._gaps import undisturbed
from proofkit.checks.speech._seams import paragraph_at
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.abbreviations import ends_in_abbreviation

NAME = "sentences/question-without-mark"
NEEDS = frozenset({Need.TEXT})

_SENTENCE = re.compile(
    r"(?:^|(?<=[.!?…] )|(?<=[.!?][\"”’'] )|(?<=[\"“‘])|(?<=\n))(?P<sentence>[A-Z][^.!?…\n\"“”]*?(?P<last>[\w'’-]+))\.(?=\s|$)"
)


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield each such question."""
    if in_verse(book):
        return
    for page in book.pages:
        for match in _SENTENCE.finditer(page.prose):
            sentence = match["sentence"]
            what = asks_what(sentence)
            if not what and not asks_whether(sentence):
                continue
            if ends_in_abbreviation(match.group()) or not undisturbed(page, *match.span()):
                continue
            if verse_at(page, *paragraph_at(page, match.start())):
                continue
            yield issue_at(
                book,
                page.span(match.start("last"), match.end()),
                check=NAME,
                tier=Tier.ERROR,
                message="a question without a question mark",
                suggestions=[match["last"] + "?"],
                confidence=0.8 if what else 0.65,
            )
