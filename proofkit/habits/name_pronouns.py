"""Which pronouns mean a character: those whose nearest subject before them it is."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence

from proofkit.analysis import Analysis, PageAnalysis
from proofkit.book import Book, Span
from proofkit.habits.people import Trace, bound_to, people_of

Votes = Mapping[str, tuple[Span, ...]]

_WORK = ("nsubj", "poss")


def pronouns_of(
    book: Book, analysis: Analysis, named: Mapping[Span, tuple[str, str]]
) -> Mapping[str, Votes]:
    """For each one named, and each noun for a person or animal, its pronouns and their places.

    A likelihood, good to count with: of two people in one sentence the wrong one may be taken.
    """
    found: dict[str, dict[str, list[Span]]] = defaultdict(lambda: defaultdict(list))
    for page, traces in people_of(book, analysis, named):
        own = analysis.page(page.number)
        for place, trace in enumerate(traces):
            who = _meant(own, trace, traces[:place]) if trace.is_pronoun else None
            if who:
                found[who][trace.sex].append(trace.span)
    return {
        who: {sex: tuple(spans) for sex, spans in votes.items()} for who, votes in found.items()
    }


def _meant(own: PageAnalysis, pronoun: Trace, before: Sequence[Trace]) -> str | None:
    """The subject that it is tied to, or else the nearest one of this sentence or the last."""
    inside = [trace for trace in before if trace.sentence == pronoun.sentence]
    tied = bound_to(own, pronoun, inside)
    if tied:
        return tied.who
    if pronoun.sex == "it" or own.tokens[pronoun.at].dep not in _WORK:
        return None
    near = inside if any(not t.is_pronoun for t in inside) else before
    possible = [
        trace
        for trace in near
        if not trace.is_pronoun
        and trace.sentence >= pronoun.sentence - 1
        and trace.sex in ("", pronoun.sex)
    ]
    subjects = [trace for trace in possible if own.tokens[trace.at].dep == "nsubj"]
    if subjects:
        return subjects[-1].who
    return possible[0].who if len({trace.who for trace in possible}) == 1 else None
