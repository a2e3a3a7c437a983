"""One row for a matter of marks or layout: the first place that is not as the rest of the book, and the others.

What the author decided comes first; then what the book mostly does. Where the two forms are about as
frequent, the row only asks.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from proofkit.book import Book, Span
from proofkit.habits.usage import Usage
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings

_CLEARLY = 3  # times as often
_RATHER = 2
_THIN = 0.7  # the share of the usual confidence where neither form is clearly the book's


@dataclass(frozen=True, slots=True, kw_only=True)
class Norm:
    """The form to follow, whether the author decided it, and how often the book has it."""

    form: str
    decided: bool
    times: int

    @property
    def elsewhere(self) -> str:
        """How often, in words: "once", "twice", "6 times"."""
        return {1: "once", 2: "twice"}.get(self.times, f"{self.times} times")


def norm_of(usage: Usage, settings: Settings, *, forms: Sequence[str]) -> Norm | None:
    """The form of a matter to follow: decided, or the most frequent; of two as frequent, the first seen."""
    decided = settings.style.form(usage.matter)
    if decided is not None and decided in forms:
        return Norm(form=decided, decided=True, times=usage.count(decided))
    used = [form for form in forms if usage.count(form)]
    if not used:
        return None
    form = min(used, key=lambda form: (-usage.count(form), usage.places[form][0]))
    return Norm(form=form, decided=False, times=usage.count(form))


@dataclass(frozen=True, slots=True, kw_only=True)
class Habit:
    """How one matter is put to the author.

    ``check``       the check's name
    ``forms``       the forms that can be followed
    ``says``        what each form is called in a sentence, with its article
    ``reading``     a place as it would stand in a form, and what of it to replace
    ``mechanical``  whether a clear majority makes the odd ones errors: nobody means them
    ``confidence``  the share that is true where the majority is clear
    """

    check: str
    forms: tuple[str, ...]
    says: Mapping[str, str]
    reading: Callable[[Book, Span, str], tuple[Span, str]]
    mechanical: bool
    confidence: float


def odd_ones(book: Book, usage: Usage, settings: Settings, habit: Habit) -> Iterator[Issue]:
    """One issue where the book has the matter in more than one form, or not in the form decided."""
    norm = norm_of(usage, settings, forms=habit.forms)
    odd = usage.against(norm.form) if norm else ()
    if norm is None or not odd:
        return
    clear = norm.decided or norm.times >= _CLEARLY * len(odd)
    thin = not clear and norm.times < _RATHER * len(odd)
    first, *others = odd
    span, better = habit.reading(book, first, norm.form)
    yield issue_at(
        book,
        span,
        check=habit.check,
        tier=Tier.ERROR if habit.mechanical and clear else Tier.QUERY,
        message=message(habit.says, _form_of(usage, first), norm),
        suggestions=(better,),
        confidence=habit.confidence * (_THIN if thin else 1.0),
        related=others,
    )


def message(says: Mapping[str, str], own: str, norm: Norm) -> str:
    """The odd form, and what it is measured by."""
    usual = says.get(norm.form, norm.form)
    if norm.decided:
        return f"{says.get(own, own)}; your style sheet has {usual}"
    return f"{says.get(own, own)}; elsewhere {usual} ({norm.elsewhere})"


def _form_of(usage: Usage, place: Span) -> str:
    return next(form for form, spans in usage.places.items() if place in spans)
