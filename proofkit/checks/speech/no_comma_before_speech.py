"""No comma between *he said* and the speech.

What it finds
    A verb of saying that runs straight into a speech of several words: *she cried out "I am here!"*

Why a reader minds
    The comma is where the narrator's voice stops and the speaker's begins.

Example
    The goat cried out "I am stuck!"

Better
    The goat cried out, "I am stuck!"

When to let it stand
    Where the words in marks are part of the sentence (*she read "The Goat's Beard"*), or where the
    book leaves the comma out throughout.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words import nearby
from proofkit.words.quotation_marks import Mark
from proofkit.words.quotations import Quotation, quotations_of

NAME = "speech/no-comma-before-speech"
NEEDS = frozenset({Need.TEXT})

_VERB = (
    r"(?:said|says|asked|asks|cried|cries|shouted|shouts|replied|replies|answered|answers|whispered|whispers|"
    r"exclaimed|muttered|murmured|screamed|yelled|begged|added|explained|announced|sighed|sobbed|moaned|"
    r"growled|roared|squeaked|squealed|hissed|croaked|wailed|grumbled|thought|wondered)"
)
_BROUGHT_IN = re.compile(
    rf"\b(?:{_VERB}(?: (?:out|back|aloud|loudly|softly|quietly|again|angrily|happily|sadly|suddenly|quickly|"
    r"(?:out )?to (?:him|her|it|them|me|us)(?:self|selves)?|to (?:the|his|her|their|my) \w+|to [A-Z]\w+))?"
    r"|asked (?:the|his|her|a|my|their) \w+|asked (?:[A-Z]\w+|him|her|them|me|us)"
    r"|called (?:out|back))(?P<gap> )$"
)
_SLIPS = 2  # more than this is a way of writing
_SAID_WORD = re.compile(
    r"\b(?:was|is|be|been|have|has|had|never|not|who|they|you|I) (?:said|thought)\s*$"
)


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterable[Issue]:
    """Yield each speech that a reporting clause runs into without a comma; a habit as one query."""
    places = []
    for quotation in quotations_of(book).speech:
        opening = quotation.opening
        if opening is None or not _spoken(book, quotation):
            continue
        page = book.page(opening.span.page)
        before = nearby.before(page.prose, opening.span.start)
        if _BROUGHT_IN.search(before[-120:]) and not _SAID_WORD.search(before):
            places.append(opening)
    habit = len(places) > _SLIPS
    for opening in places[:1] if habit else places:
        yield _issue(book, opening, [m.span for m in places[1:]] if habit else [])


def _issue(book: Book, opening: Mark, others: list[Span]) -> Issue:
    page = book.page(opening.span.page)
    start = opening.span.start - 1
    word_start = page.prose.rfind(" ", 0, start) + 1
    return issue_at(
        book,
        page.span(word_start, opening.span.end),
        check=NAME,
        tier=Tier.QUERY if others else Tier.ERROR,
        message="no comma between who spoke and the speech",
        suggestions=[f"{page.prose[word_start:start]}, {opening.text}"],
        confidence=0.5 if others else 0.65,
        related=others,
    )


def _spoken(book: Book, quotation: Quotation) -> bool:
    """Whether the marks hold a sentence, and not a word, a title or the end of the story's sentence."""
    inner = " ".join(book.quote(part) for part in quotation.parts).strip()
    return len(inner.split()) > 1 and inner[-1:] in ".,!?…—–"
