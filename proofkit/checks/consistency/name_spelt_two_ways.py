"""One name in two spellings.

What it finds
    A name used once or seldom that differs in a letter, an accent or a capital from one the book
    uses often: Nozibelle beside Nozibele. Two names that each act often, or together, are two people.

Why a reader minds
    The child asks who that is.

Example
    Tibbs ran home. Tibbs was hungry, and Mother called Tibbs. "Eat, Tibs," said Mother.

Better
    Tibbs ran home. Tibbs was hungry, and Mother called Tibbs. "Eat, Tibbs," said Mother.

When to let it stand
    When they are two people, or one is a pet name for the other.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.checks.consistency._name_pairs import likelihood, similar
from proofkit.checks.counting import times
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.alike import same_but_for_accents
from proofkit.words.dictionary import Dictionary, dictionary
from proofkit.words.vocabulary import WORD, Use

NAME = "consistency/name-spelt-two-ways"
NEEDS = frozenset({Need.TEXT})

_SHORTEST = 2
_TITLES = ("mr", "mrs", "ms", "dr", "mister", "master")
# O'Malley, D'Arcy; other words with an apostrophe are contractions and dialect.
_APOSTROPHE_INSIDE = re.compile(r"(?i)[od]['’][^'’]+|[^'’]+")


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue for each seldom spelling, with its other places as related."""
    words = dictionary(analysis.english)
    decided = _decided(settings)
    names = [use for use in analysis.vocabulary.uses.values() if _may_be_a_name(use)]
    best: dict[str, tuple[float, int, Use, Use]] = {}
    for pair in similar(names):
        seldom, usual = _ordered(pair, decided)
        if seldom.word in decided or not (
            usual.word in decided or _is_surely_a_name(usual, seldom, words)
        ):
            continue
        ruled = usual.word in decided
        likely = likelihood(book, seldom, usual, words, decided=ruled)
        found = (likely, usual.count, seldom, usual)
        if found[0] and found[:2] > best.get(seldom.word, (0.0, 0))[:2]:
            best[seldom.word] = found
    for confidence, _, seldom, usual in best.values():
        yield _spelling(book, seldom, usual, decided, confidence)
    for use in names:
        yield from _odd_capitals(book, use, decided)


def _decided(settings: Settings) -> dict[str, str]:
    """The words of the names that the author decided, by their lower-case form."""
    words = (word for name in settings.style.names for word in WORD.findall(name))
    return {word.lower(): word for word in words if word[0].isupper()}


def _ordered(pair: tuple[Use, Use], decided: dict[str, str]) -> Sequence[Use]:
    """The one to doubt, and the one to follow: the decided one, else the more frequent."""
    return sorted(pair, key=lambda use: (use.word in decided, use.count, -use.spans[0].page))


def _may_be_a_name(use: Use) -> bool:
    """Mostly with a capital, and no contraction: a name that is also a word may be in lower case."""
    return (
        len(use.word) >= _SHORTEST
        and use.usual_form[0].isupper()
        and use.count >= 2 * use.lower
        and use.word not in _TITLES
        and _APOSTROPHE_INSIDE.fullmatch(use.word) is not None
    )


def _is_surely_a_name(use: Use, other: Use, words: Dictionary) -> bool:
    """Capitals inside sentences show it, or that no English word is spelt so but for accents."""
    if use.capitals_inside >= max(1, use.lower):
        return True
    known = use.word in words.words and not same_but_for_accents(use.word, other.word)
    return not use.lower and use.count > 1 and not known


def _spelling(
    book: Book, seldom: Use, usual: Use, decided: dict[str, str], confidence: float
) -> Issue:
    odd = tuple(span for span in seldom.spans if book.quote(span)[0].isupper())
    if usual.word in decided:
        form = decided[usual.word]
        return _issue(book, odd, form, f"your style sheet has {form}", max(confidence, 0.85))
    return _issue(
        book, odd, usual.usual_form, _elsewhere(usual.usual_form, usual.count), confidence
    )


def _elsewhere(form: str, count: int) -> str:
    return f"elsewhere the book has {form} ({times(count)})"


def _issue(
    book: Book, spans: tuple[Span, ...], form: str, message: str, confidence: float
) -> Issue:
    return issue_at(
        book,
        spans[0],
        check=NAME,
        tier=Tier.ERROR if confidence >= 0.7 else Tier.QUERY,
        message=message,
        suggestions=(form,),
        confidence=confidence,
        related=spans[1:],
    )


def _odd_capitals(book: Book, use: Use, decided: dict[str, str]) -> Iterator[Issue]:
    """McTavish and Mctavish; capitals for the whole word only shout."""
    forms = [form for form in use.forms if form[0].isupper() and not form.isupper()]
    follow = decided.get(use.word) or max(forms, key=lambda form: use.forms[form], default="")
    others = [form for form in forms if form != follow]
    if not others:
        return
    if use.word in decided:
        message, confidence = f"your style sheet has {follow}", 0.9
    elif use.forms[follow] > max(use.forms[form] for form in others):
        message, confidence = _elsewhere(follow, use.forms[follow]), 0.8
    else:
        return
    odd = tuple(span for span in use.spans if book.quote(span) in others)
    yield _issue(book, odd, follow, message, confidence)
