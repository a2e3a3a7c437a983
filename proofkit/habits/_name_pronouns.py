"""Which pronouns mean a character, where a sentence leaves nobody else."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence

from proofkit.analysis import Analysis, PageAnalysis
from proofkit.book import Book, Span
from proofkit.habits._people import Trace, people_of
from proofkit.words.people import OWN

Votes = Mapping[str, tuple[Span, ...]]


def pronouns_of(
    book: Book, analysis: Analysis, named: Mapping[Span, tuple[str, str]]
) -> Mapping[str, Votes]:
    """For each one named (and each noun for a person or animal), its pronouns and their places."""
    found: dict[str, dict[str, list[Span]]] = defaultdict(lambda: defaultdict(list))
    for page, traces in people_of(book, analysis, named):
        own = analysis.page(page.number)
        for number in range(len(own.sentences)):
            inside = [trace for trace in traces if trace.sentence == number]
            before = [trace for trace in traces if trace.sentence == number - 1]
            for trace in inside:
                who = meant(own, trace, inside, before)
                if who:
                    found[who][trace.sex].append(trace.span)
    return {
        who: {sex: tuple(spans) for sex, spans in votes.items()} for who, votes in found.items()
    }


def meant(
    own: PageAnalysis, pronoun: Trace, inside: Sequence[Trace], before: Sequence[Trace]
) -> str | None:
    """Whom a pronoun must mean: the subject whose own part it is, or the only one spoken of."""
    if not pronoun.is_pronoun:
        return None
    subject = bound_to(own, pronoun, inside)
    if subject:
        return subject.who
    if pronoun.sex == "it" or own.tokens[pronoun.at].dep not in ("nsubj", "poss"):
        return None
    who = {trace.who for trace in inside if not trace.is_pronoun}
    if not who and inside and inside[0] is pronoun:
        who = {trace.who for trace in before if not trace.is_pronoun}
        inside = before
    if len(who) != 1:
        return None
    first = next(trace for trace in inside if not trace.is_pronoun)
    return first.who if first.span < pronoun.span else None


def bound_to(own: PageAnalysis, pronoun: Trace, inside: Sequence[Trace]) -> Trace | None:
    """The subject that the grammar ties the pronoun to: Anna shook her head, Tom hurt himself."""
    token = own.tokens[pronoun.at]
    word = token.text.lower()
    if word.endswith("self"):
        verb = _verb_over(own, pronoun.at)
    elif token.dep == "poss" and own.tokens[token.head].text.lower() in OWN:
        if own.tokens[token.head].dep not in ("dobj", "pobj"):
            return None
        verb = _verb_over(own, token.head)
    else:
        return None
    subjects = [
        trace
        for trace in inside
        if not trace.is_pronoun
        and own.tokens[trace.at].dep == "nsubj"
        and own.tokens[trace.at].head == verb
        and trace.at < pronoun.at
    ]
    return subjects[0] if len(subjects) == 1 else None


def _verb_over(own: PageAnalysis, at: int) -> int:
    """The nearest verb that the word hangs on."""
    for _ in range(4):
        at = own.tokens[at].head
        if own.tokens[at].pos in ("VERB", "AUX"):
            break
    return at
