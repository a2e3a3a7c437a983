"""A title before a name, without its capital.

What it finds
    "mr", "mrs" and "dr" in lower case, and titles such as "uncle" or "king" in lower case right
    before a name, with no article or owner before them: "uncle Bo came".

Why a reader minds
    Before a name a title is part of the name. After "my" or "the" it is not: my uncle Bo.

Example
    Every morning mr Tock wound the clocks, and uncle Bo watched.

Better
    Every morning Mr Tock wound the clocks, and Uncle Bo watched.

When to let it stand
    When the word tells what someone does, not what he is called, or when the name is not a person's.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.checks.consistency._refrain import by_surroundings
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.lists import word_set
from proofkit.words.vocabulary import Vocabulary, opens_sentence

NAME = "consistency/title-without-capital"
NEEDS = frozenset({Need.TEXT})

_ALWAYS = re.compile(r"(?<![\w'’.-])(mr|mrs)\b(?=\.?\s+\w)")
_BEFORE_A_NAME = re.compile(
    r"(?<![\w'’-])(ms|dr|uncle|aunt|auntie|aunty|king|queen|prince|princess|captain|sir|lady|"
    r"professor|grandma|grandpa|granny)\b(?=\.? ([A-Z][\w’'-]+))"
)
# An adjective stands between, or the title is another's: "her uncle Bo", "good king Otto".
_WORD_BEFORE = re.compile(r"([\w’'-]+)[ ]$")
_NO_TITLE_AFTER = word_set(
    """
    a an the this that his her my your our their its whose one every old young great little
    new dear poor good wise big my no another some any's
    """
)


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue each; a refrain's are one."""
    sure = [page.span(*m.span(1)) for page in book.pages for m in _ALWAYS.finditer(page.prose)]
    likely = [
        page.span(*m.span(1))
        for page in book.pages
        for m in _BEFORE_A_NAME.finditer(page.prose)
        if _is_title(m, analysis.vocabulary)
    ]
    for spans, confidence in ((sure, 0.95), (likely, 0.75)):
        for first, *others in by_surroundings(book, spans):
            yield _issue(book, first, others, confidence)


def _issue(book: Book, span: Span, others: list[Span], confidence: float) -> Issue:
    title = book.quote(span).capitalize()
    return issue_at(
        book,
        span,
        check=NAME,
        tier=Tier.ERROR,
        message=f"a capital for {title} before a name",
        suggestions=(title,),
        confidence=confidence,
        related=others,
    )


def _is_title(match: re.Match[str], vocabulary: Vocabulary) -> bool:
    before = _WORD_BEFORE.search(match.string[max(0, match.start() - 30) : match.start()])
    word = before[1] if before else ""
    if word.lower() in _NO_TITLE_AFTER or word.endswith(("'s", "’s", "s'", "s’")):
        return False
    return vocabulary.is_name(match[2].removesuffix("'s").removesuffix("’s")) or not opens_sentence(
        match.string, match.start(2)
    )
