"""One character, he here and she there.

What it finds
    "He" or "his" where the only one who can be meant is "she" all through the book, or the other way
    round; and an animal that has his tail in one sentence and its tail in the next. Only what the story
    tells counts, not what is said in it, and only where nobody else near by can be meant.

Why a reader minds
    The child looks for somebody who isn't there.

Example
    Tilda took her net and ran to the sea. She filled her bucket. Then he sat down.

Better
    Tilda took her net and ran to the sea. She filled her bucket. Then she sat down.

When to let it stand
    When somebody is meant whom only the picture shows.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import pairwise

from proofkit.analysis import Analysis, PageAnalysis
from proofkit.book import Book, Span
from proofkit.checks.check import Need
from proofkit.checks.consistency._pronoun_forms import in_the_other
from proofkit.habits.name_pronouns import pronouns_of
from proofkit.habits.names import names_of, places_of
from proofkit.habits.people import PRONOUNS, Trace, bound_to, people_of, verb_over
from proofkit.issue import Issue, Tier, issue_at
from proofkit.settings import Settings
from proofkit.words.lists import word_set
from proofkit.words.reporting import MANNER, SAYING

NAME = "consistency/character-pronouns"
NEEDS = frozenset({Need.LANGUAGE_MODEL})

_OBJECTS = ("dobj", "pobj", "dative")
_OTHER = {"he": "she", "she": "he"}
_TIMES = 3
_SEVERAL = 2
_SENTENCES_BACK = 2
# What one does with one's own head and eyes only: Anna shook her head; but Anna stroked his head.
_WITH_ONES_OWN = word_set(
    """
    shake nod turn lift raise bow scratch hang toss tilt lower cock open close shut rub roll blink
    hold catch lose make change take keep do try lick wag flap prick clear shrug hunch narrow
    """
)
_NEVER_ANOTHERS = word_set(
    "head eyes lips breath mind way temper balance best turn tail wings ears throat shoulders"
)


def find(book: Book, analysis: Analysis, settings: Settings) -> Iterator[Issue]:
    """One issue for each page, on its first odd pronoun, with the page's others as related."""
    named = places_of(names_of(book, analysis))
    sexes = _sexes(pronouns_of(book, analysis, named))
    before: tuple[Trace, ...] = ()
    for page, traces in people_of(book, analysis, named):
        own = analysis.page(page.number)
        here = tuple(replace(t, sex=t.sex or sexes.get(t.who, "")) for t in traces)
        odd = {*_without_anybody(own, before, here), *_tied(own, here)}
        if odd:
            yield _issue(book, own, sorted(odd, key=lambda trace: trace.span), here)
        else:
            yield from _his_and_its(book, own, here)
        before = here


def _sexes(pronouns: Mapping[str, Mapping[str, tuple[Span, ...]]]) -> dict[str, str]:
    """For each one whose own pronouns are nearly all the same, which."""
    sexes = {}
    for who, votes in pronouns.items():
        counts = {sex: len(votes.get(sex, ())) for sex in _OTHER}
        usual = max(counts, key=lambda sex: counts[sex])
        if (
            counts[usual] >= (_SEVERAL if who.startswith("@") else _TIMES)
            and counts[usual] >= _TIMES * counts[_OTHER[usual]]
        ):
            sexes[who] = usual
    return sexes


def _without_anybody(
    own: PageAnalysis, before: Sequence[Trace], here: Sequence[Trace]
) -> Iterator[Trace]:
    """A he where nobody may be he, from the page's beginning (and a little before) to the sentence's end."""
    for sex, other in _OTHER.items():
        odd = [
            trace
            for trace in here
            if trace.is_pronoun and trace.sex == sex and not _is_either(own, trace)
        ]
        if len(odd) > sum(trace.sex == other for trace in here):
            continue
        if all(_has_nobody(own, trace, before, here, odd) for trace in odd):
            yield from odd


def _has_nobody(
    own: PageAnalysis,
    pronoun: Trace,
    before: Sequence[Trace],
    here: Sequence[Trace],
    odd: Sequence[Trace],
) -> bool:
    """Whether nobody whom it may mean is heard of, and somebody near by is of the other kind."""
    other = _OTHER[pronoun.sex]
    heard = [t for t in _heard(own, pronoun, before, here) if t not in odd]
    if any(t.sex == pronoun.sex for t in heard):
        return False
    unknown = [t for t in heard if t.sex == ""]
    if not unknown:
        near = [t for t in heard if t.sex == other and _is_near(t, pronoun)]
        return any(not _is_subject_beside(own, t, pronoun) for t in near)
    held = not any(_is_near(t, pronoun) for t in unknown)
    return held and _is_held(own, pronoun, here, other)


def _is_held(own: PageAnalysis, pronoun: Trace, here: Sequence[Trace], other: str) -> bool:
    """Whether the words for people right before and after it are both of the other kind: he, she, he.

    In talk to and fro that means nothing.
    """
    token = own.tokens[pronoun.at]
    if own.tokens[token.head].text.lower() in SAYING | MANNER:
        return False
    at = here.index(pronoun)
    if not at or at + 1 == len(here):
        return False
    before, after = here[at - 1], here[at + 1]
    inside = [t for t in here[:at] if t.sentence == pronoun.sentence]
    return (
        all(t.sex == other for t in inside)
        and before.sex == after.sex == other
        and after.is_pronoun
        and before.sentence >= pronoun.sentence - 1
        and after.sentence <= pronoun.sentence + 1
    )


def _is_either(own: PageAnalysis, pronoun: Trace) -> bool:
    """He or she, his and her: of everybody."""
    around = own.tokens[max(0, pronoun.at - 2) : pronoun.at + 3]
    words = {token.text.lower() for token in around}
    return bool(words & {"or", "and", "/"}) and len({PRONOUNS.get(w) for w in words} - {None}) > 1


def _heard(
    own: PageAnalysis, pronoun: Trace, before: Sequence[Trace], here: Sequence[Trace]
) -> Iterator[Trace]:
    """Everybody whom the pronoun may mean: of the page before, those of its last sentences.

    Where a speech goes to and fro, all of that page. The name may follow in the same sentence (when he
    woke, Tom …), but not after a subject of the main clause.
    """
    token = own.tokens[pronoun.at]
    verb = own.tokens[token.head]
    last = max((trace.sentence for trace in before), default=0)
    settled = pronoun.sentence >= _SENTENCES_BACK and any(
        t.sex == _OTHER[pronoun.sex] and not t.is_pronoun and t.span < pronoun.span for t in here
    )
    back = 0 if settled else last if verb.text.lower() in SAYING else _SENTENCES_BACK
    yield from (trace for trace in before if trace.sentence > last - back)
    leads = token.dep == "nsubj" and verb.dep == "ROOT"
    for trace in here:
        if trace.span < pronoun.span or (trace.sentence == pronoun.sentence and not leads):
            yield trace


def _is_subject_beside(own: PageAnalysis, trace: Trace, pronoun: Trace) -> bool:
    """Mum sat down beside him: whoever that is, it isn't Mum."""
    token = own.tokens[pronoun.at]
    if token.dep not in _OBJECTS:
        return False
    subject = own.tokens[trace.at]
    return subject.dep == "nsubj" and subject.head == verb_over(own, pronoun.at)


def _is_near(trace: Trace, pronoun: Trace) -> bool:
    return (
        trace.span.page == pronoun.span.page
        and trace.span < pronoun.span
        and trace.sentence >= pronoun.sentence - _SENTENCES_BACK
    )


def _tied(own: PageAnalysis, here: Sequence[Trace]) -> Iterator[Trace]:
    """Anna shook his head; Tom hurt herself."""
    for trace in here:
        if trace.is_pronoun and trace.sex in _OTHER and _is_ones_own(own, trace):
            subject = bound_to(own, trace, [t for t in here if t.sentence == trace.sentence])
            if subject and subject.sex == _OTHER[trace.sex]:
                yield trace


def _is_ones_own(own: PageAnalysis, trace: Trace) -> bool:
    token = own.tokens[trace.at]
    if token.text.lower().endswith("self"):
        return True
    part = own.tokens[token.head]
    verb = own.tokens[part.head]
    return part.text.lower() in _NEVER_ANOTHERS and verb.lemma in _WITH_ONES_OWN


def _issue(book: Book, own: PageAnalysis, odd: Sequence[Trace], here: Sequence[Trace]) -> Issue:
    first, *others = odd
    other = _OTHER[first.sex]
    who = [t for t in here if t.sex == other and not t.is_pronoun and t.span < first.span]
    name = book.quote(who[-1].span) if who else ""
    return issue_at(
        book,
        first.span,
        check=NAME,
        tier=Tier.QUERY,
        message=f"elsewhere {name} is {other}" if name else f"nobody near by is {first.sex}",
        suggestions=(in_the_other(own.tokens[first.at], other),),
        confidence=0.6,
        related=[trace.span for trace in others],
    )


def _his_and_its(book: Book, own: PageAnalysis, here: Sequence[Trace]) -> Iterator[Issue]:
    """The frog lost his tail. Now the frog has not got its tail."""
    parts: list[tuple[str, str, Trace]] = []
    for trace in here:
        token = own.tokens[trace.at]
        if trace.is_pronoun and token.dep == "poss":
            subject = bound_to(own, trace, [t for t in here if t.sentence == trace.sentence])
            if subject:
                who = f"{own.tokens[max(0, subject.at - 1)].text} {subject.who}".lower()
                parts.append((who, own.tokens[token.head].lemma, trace))
    for (who, part, first), (other, same, trace) in pairwise(parts):
        if (who, part) == (other, same) and first.sex != trace.sex:
            yield issue_at(
                book,
                trace.span,
                check=NAME,
                tier=Tier.QUERY,
                message=f"just before it is {book.quote(first.span).lower()} {part}",
                suggestions=(in_the_other(own.tokens[trace.at], first.sex),),
                confidence=0.6,
                related=[first.span],
            )
