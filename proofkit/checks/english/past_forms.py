"""Past forms in -t and in -ed.

What it finds
    One verb with two past forms (she learnt to swim; he learned to row), and in an American book a past form
    in -t, which is British: learnt, spelt, dreamt, burnt, leant, smelt, spilt, spoilt. Both endings are good
    British English; leapt is American too. Adjectives don't count: burnt toast, a learned owl.

Why a reader minds
    A child who has just found out how a word is spelt meets it in another way three pages on.

Example
    Wren learnt to whistle. Then Finn learned to whistle too.

Better
    Wren learnt to whistle. Then Finn learnt to whistle too.

When to let it stand
    When a character speaks so, or the rhyme needs it. New Hart's Rules asks for one form all through, and
    leaves it to you which.
"""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.checks.counting import times
from proofkit.checks.english._certainty import certainty
from proofkit.habits.past_forms import ED, FORMS, MATTER, VERBS, T, usage, verbs
from proofkit.habits.usage import Usage
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import English, Settings
from proofkit.words.variants import cased_like

NAME = "english/past-forms"
NEEDS = frozenset({Need.TEXT})

_CLEAR = 2  # times as often
_BOTH_IN_AMERICAN = frozenset({"leap"})


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue a verb, on the first odd place."""
    decided = settings.style.form(MATTER)
    own = verbs(book, analysis)
    for verb in own:
        if decided in FORMS:
            yield from _against(book, verb, decided, "your style sheet has {}", 0.85, Tier.ERROR)
        elif analysis.english is English.AMERICAN and verb.matter not in _BOTH_IN_AMERICAN:
            known = certainty(book, analysis, settings)
            why = f"a British past form, {known.where}"
            yield from _against(book, verb, ED, why, 0.6 if known.sure else 0.45, Tier.QUERY)
        elif len(verb.places) > 1:
            yield from _mixed(book, verb, usage(book, analysis))


def _mixed(book: Book, verb: Usage, whole: Usage) -> Iterator[Issue]:
    """The verb's usual form wins; where it has none, that of the book's other verbs."""
    form = verb.usual or whole.usual or T
    clear = verb.count(form) >= _CLEAR * len(verb.against(form))
    why = "elsewhere the book has {} (" + times(verb.count(form)) + ")"
    yield from _against(book, verb, form, why, 0.65 if clear else 0.5, Tier.QUERY)


def _against(
    book: Book, verb: Usage, form: str, why: str, confidence: float, tier: Tier
) -> Iterator[Issue]:
    right = VERBS[verb.matter][FORMS.index(form)]
    odd: tuple[Span, ...] = verb.against(form)
    if odd:
        yield issue_at(
            book,
            odd[0],
            check=NAME,
            tier=tier,
            message=why.format(right),
            suggestions=(cased_like(right, book.quote(odd[0])),),
            confidence=confidence,
            related=odd[1:],
        )
