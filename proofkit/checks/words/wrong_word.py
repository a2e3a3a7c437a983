"""A word that is a word, but not the one that fits between its neighbours.

What it finds
    "jumped form the roof", "a hole in the would", "she new the way": words that are often written for
    one another, where the words around are far more used to the other one. Two hundred pairs are
    known; the neighbours were learnt from old children's novels.

Why a reader minds
    No spelling checker stops at it, and whoever reads aloud says what is written.

Example
    The squirrel jumped form the roof.

Better
    The squirrel jumped from the roof.

When to let it stand
    In a pun, in a dialect, in a note that a child in the story wrote; and where you mean just that
    word in an unusual place.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Page, Role, Span
from proofkit.checks.check import Need
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.context.model import Doubt, context_model
from proofkit.words.context.tokens import Tokens, tokens_of
from proofkit.words.dictionary import dictionary
from proofkit.words.frequency import zipf
from proofkit.words.persons import sentence_spans
from proofkit.words.suggest import in_case_of
from proofkit.words.vocabulary import WORD

NAME = "words/wrong-word"
NEEDS = frozenset({Need.TEXT})
# A word that the book is about is used often and in places of its own: three times in a picture book,
# and once more for each further thousand words.
_OFTEN = 3
_SMALL_WORD = 5.1  # Zipf; the commoner words are seldom what a book is about
_STRANGE = 2  # unknown words in a sentence that make it another language

# Nobody knows what would have followed; and no’ a bit is dialect.
_BROKEN_OFF = re.compile(r"\s?(?:…|\.\.|[—–]|--)|['’] (?=[a-z])")

# How sure, by how far the odds lie above the margin. What lies nearer to it was nearly always right
# on today's picture books.
_SURE = ((6.0, 0.78), (4.0, 0.7), (2.0, 0.5), (0.5, 0.4))
_LEAST = 0.5
# Nothing stands before the first word of a sentence that could speak for it.
_LEAST_OF_A_FIRST_WORD = 2.0

_Place = tuple[Span, Doubt]


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """Yield one issue for each word that another seems meant for, alike ones in alike places together."""
    alike: dict[tuple[str, ...], list[_Place]] = defaultdict(list)
    for page in book.pages:
        for key, span, doubt in _doubts(page, analysis):
            alike[key].append((span, doubt))
    for places in alike.values():
        (first, doubt), *others = places
        confidence = _confidence(doubt)
        yield issue_at(
            book,
            first,
            check=NAME,
            tier=Tier.ERROR if confidence >= 0.6 else Tier.QUERY,
            message="a word, but perhaps not the one meant here",
            confidence=confidence,
            suggestions=[_reading(book, first, doubt.choice.meant)],
            related=[span for span, _ in others],
        )


def _doubts(page: Page, analysis: Analysis) -> Iterator[tuple[tuple[str, ...], Span, Doubt]]:
    model, prose = context_model(), page.prose
    for part in page.paragraphs:
        if part.role is not Role.STORY:
            continue
        tokens = tokens_of(prose, analysis.vocabulary.is_name, part.start, part.end)
        for doubt in model.doubts(tokens):
            span = page.span(tokens.starts[doubt.at], tokens.ends[doubt.at])
            least = _LEAST_OF_A_FIRST_WORD if prose[span.start].isupper() else _LEAST
            if doubt.excess < least or _BROKEN_OFF.match(prose, span.end):
                continue
            if _is_theme(doubt.choice.written, analysis):
                continue
            if not _is_foreign(prose[part.start : part.end], span.start - part.start, analysis):
                yield _surroundings(tokens, doubt), span, doubt


def _surroundings(tokens: Tokens, doubt: Doubt) -> tuple[str, ...]:
    return (*tokens.words[doubt.at - 2 : doubt.at + 3], doubt.choice.meant)


def _is_theme(word: str, analysis: Analysis) -> bool:
    """Whether this is a word of content that the book uses again and again."""
    count = analysis.vocabulary.count(word)
    if count < _OFTEN or zipf(word) >= _SMALL_WORD:
        return False
    return count >= _OFTEN + sum(use.count for use in analysis.vocabulary.uses.values()) // 1000


def _is_foreign(paragraph: str, at: int, analysis: Analysis) -> bool:
    """Whether the sentence at ``at`` has so many unknown words that it is hardly English."""
    known = dictionary(analysis.english)
    for start, end in sentence_spans(paragraph):
        if start <= at < end:
            words = {match.group() for match in WORD.finditer(paragraph, start, end)}
            strange = [w for w in words if w.islower() and not known.knows(w)]
            return len(strange) >= _STRANGE
    return False


def _confidence(doubt: Doubt) -> float:
    """The share that is true, from planted slips and clean text (tests/bench/planted_words.py).

    Of planted slips 5 % lie in the lowest step, 12 % in the next, 13 % and 42 % in the highest; of false
    alarms in a thousand words 0.1, 0.1, 0.02 and 0.03. In a draft with two such slips in a thousand
    words 0.5, 0.7, 0.9 and 0.95 would be true, in a well-read one with half a slip 0.2, 0.4, 0.8 and
    0.9. The steps lie between; the highest below the rules made for one slip.
    """
    return next(sure for least, sure in _SURE if doubt.excess >= least)


def _reading(book: Book, span: Span, meant: str) -> str:
    written = book.quote(span)
    curly = "’" in book.page(span.page).text and "'" not in book.page(span.page).text
    return in_case_of(written, meant.replace("'", "’") if curly else meant)
