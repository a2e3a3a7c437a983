"""One row for words that the book writes in two ways: on the first odd place, with the others beside it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from proofkit.book import Book, Span
from proofkit.checks.counting import times
from proofkit.habits.usage import Usage
from proofkit.issue import Issue, Tier, issue_at
from proofkit.words.vocabulary import opens_sentence

# From this on the majority is plain, and the rest odd.
_PLAIN = 2
_DECIDED = 0.9


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """How the odd places of one matter are put.

    ``check``       the check's name
    ``better``      what should stand at a place, written in a form
    ``preferred``   which of several forms that are as frequent to follow
    ``shown``       how a form is named to the author; as a rule, as it would stand there
    ``confidence``  where the majority is plain; a little less where it is thin
    """

    check: str
    better: Callable[[Span, str], str]
    confidence: float
    preferred: Callable[[Sequence[str]], str] = min
    shown: Callable[[str], str] | None = None


def row_of(book: Book, usage: Usage, row: Row, *, decided: str | None = None) -> Issue | None:
    """The issue on all places that are not in the decided form, or else in the usual one; or None."""
    form = decided or usage.usual or _first_of_tied(usage, row)
    odd = usage.against(form) if form else ()
    if not form or not odd:
        return None
    count = usage.count(form)
    plain = bool(decided) or count >= _PLAIN * len(odd)
    first = min(odd)
    return issue_at(
        book,
        first,
        check=row.check,
        tier=Tier.ERROR if plain else Tier.QUERY,
        message=_message(book, usage, first, form, row, decided=bool(decided)),
        suggestions=(row.better(first, form),),
        confidence=_DECIDED if decided else row.confidence if plain else row.confidence - 0.1,
        related=[span for span in odd if span != first],
    )


def _first_of_tied(usage: Usage, row: Row) -> str | None:
    most = max((usage.count(form) for form in usage.places), default=0)
    tied = sorted(form for form in usage.places if usage.count(form) == most)
    return row.preferred(tied) if len(tied) > 1 else None


def _message(book: Book, usage: Usage, place: Span, form: str, row: Row, *, decided: bool) -> str:
    def shown(each: str) -> str:
        if row.shown:
            return row.shown(each)
        there = row.better(place, each)
        # A capital that only opens the sentence is none of the form's own.
        return there[:1].lower() + there[1:] if opens and each.islower() else there

    opens = opens_sentence(book.page(place.page).text, place.start)

    if decided:
        return f"your style sheet has {shown(form)}"
    count = usage.count(form)
    rivals = [other for other in usage.places if other != form and usage.count(other) == count]
    if rivals:
        return f"the book has both {shown(form)} and {shown(rivals[0])}"
    return f"elsewhere the book has {shown(form)} ({times(count)})"
