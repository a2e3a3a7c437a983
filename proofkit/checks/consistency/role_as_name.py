"""A character's name that is also a common noun, once without its capital.

What it finds
    "crow flew off" in a book where the bird is called Crow: no article before it, so it does a
    name's work, but in lower case.

Why a reader minds
    One moment Crow is a person, the next a word.

Example
    Fox met Crow. "Give me the cheese," Fox told Crow. But crow was clever.

Better
    Fox met Crow. "Give me the cheese," Fox told Crow. But Crow was clever.

When to let it stand
    When the thing is meant and not the character.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from proofkit.analysis import Analysis, PageAnalysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.checks.consistency._roles import (
    MASSES,
    NEVER_A_ROLE,
    is_address,
    role_uses,
    stands_alone,
)
from proofkit.habits.tokens import token_at
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.reporting import SAYING
from proofkit.words.vocabulary import Use, opens_sentence

NAME = "consistency/role-as-name"
NEEDS = frozenset({Need.LANGUAGE_MODEL})

_TIMES_A_NAME = 3
_TIMES_IN_SENTENCES = 2
_SELDOM = 2
_NAME_BEFORE = re.compile(r"(?<![\w'’])([A-Z][^\W\d_]*)\.?(?: of| of the)? $")
_NAME_AFTER = re.compile(r" (?:of (?:the )?)?[A-Z]")
_EARSHOT = 24  # characters
_TITLES = ("mr", "mrs", "miss", "ms", "dr")
_OPEN = ("NOUN", "PROPN", "VERB", "ADJ")
_BEFORE_A_KIND = ("of", "as", "be", "been", "is", "was", "than", "like", "become", "became")
_NOUNS = ("NOUN", "PROPN")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue for each place: the book has the word as a name at least three times as often."""
    found: set[Span] = set()
    for uses in role_uses(book, analysis).values():
        if not uses.bare_capital or uses.as_name < _TIMES_A_NAME * max(1, len(uses.bare_lower)):
            continue
        for span in uses.bare_lower:
            found.add(span)
            yield _issue(book, span, uses.as_name, 0.75)
    decided = {name.lower() for name in settings.style.names}
    for use in analysis.vocabulary.uses.values():
        for span in _left_out(book, analysis, use, decided=use.word in decided):
            if span not in found:
                yield _issue(book, span, use.count - use.lower, 0.6)


def _issue(book: Book, span: Span, count: int, confidence: float) -> Issue:
    name = book.quote(span).capitalize()
    return issue_at(
        book,
        span,
        check=NAME,
        tier=Tier.ERROR,
        message=f"elsewhere {name} is a name ({count} times)",
        suggestions=(name,),
        confidence=confidence,
    )


def _left_out(book: Book, analysis: Analysis, use: Use, *, decided: bool) -> Iterator[Span]:
    """Where a word that is a name all through the book stands in lower case, and as bare as a name."""
    if use.lower > _SELDOM or not (decided or _is_a_name(book, analysis, use)):
        return
    for span in use.spans:
        if book.quote(span) == use.word:
            own = analysis.page(span.page)
            at = token_at(own, span.end)
            if at is not None and _does_a_names_work(own, at):
                yield span


def _is_a_name(book: Book, analysis: Analysis, use: Use) -> bool:
    """Far more often with a capital than without, and not after "the", as a role would be."""
    capitals = [
        span
        for span in use.spans
        if book.quote(span)[0].isupper() and not _is_in_a_longer_name(book, span)
    ]
    often = _TIMES_IN_SENTENCES if use.capitals_inside else _TIMES_A_NAME
    if not use.lower or len(capitals) < often * use.lower or use.word in MASSES | NEVER_A_ROLE:
        return False
    if not use.capitals_inside and sum(_acts(analysis, s) for s in capitals) < _TIMES_A_NAME:
        return False
    articles = sum(_article_before(book, span) for span in capitals)
    return _TIMES_A_NAME * articles <= len(capitals)


def _is_in_a_longer_name(book: Book, span: Span) -> bool:
    """Henry Field, the Lake of Delight."""
    prose = book.page(span.page).prose
    before = _NAME_BEFORE.search(prose, max(0, span.start - _EARSHOT), span.start)
    if before and before[1].lower() in _TITLES:
        return False
    opens = before is not None and opens_sentence(prose, before.start())
    return (before is not None and not opens) or _NAME_AFTER.match(prose, span.end) is not None


def _article_before(book: Book, span: Span) -> bool:
    before = book.page(span.page).prose[max(0, span.start - 4) : span.start].lower()
    return before.endswith(("the ", " a ", " an "))


def _acts(analysis: Analysis, span: Span) -> bool:
    """Whether the word there is the subject of a verb that is no form of be."""
    own = analysis.page(span.page)
    at = token_at(own, span.end)
    if at is None or own.tokens[at].pos not in _NOUNS:
        return False
    return own.tokens[at].dep == "nsubj" and own.tokens[own.tokens[at].head].pos == "VERB"


def _does_a_names_work(own: PageAnalysis, at: int) -> bool:
    token = own.tokens[at]
    before = own.tokens[at - 1].text.lower().rstrip(".") if at else ""
    if before in _TITLES or (before in SAYING and token.pos in _OPEN):
        return True
    if is_address(own, at) and token.pos in _OPEN:
        return True
    many = token.tag in ("NNS", "NNPS") and token.text.endswith("s")
    noun = token.pos in _NOUNS and not many and before not in _BEFORE_A_KIND
    return noun and stands_alone(own, at)
