"""The characters, places and things with a name in a book, each with every way it is called.

Joined are a name and the same with a title or an epithet ("Mr Tock", "Tock", "Old Mr Tock"), a first
name and the full one where only one person bears it, and forms that differ in accents or capitals
only. Two titles that can't be one person's (Mr Tock, Mrs Tock) are two people.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from enum import StrEnum

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.habits._name_joining import EPITHETS, joined
from proofkit.habits._name_kinds import Evidence, evidence_of
from proofkit.habits.mentions import Mention, mentions_of
from proofkit.habits.name_pronouns import pronouns_of
from proofkit.words.titles import pronoun_of_title


class Kind(StrEnum):
    """What bears the name."""

    CHARACTER = "character"
    PLACE = "place"
    THING = "thing"


@dataclass(frozen=True, slots=True, kw_only=True)
class Named:
    """Somebody or something with a name.

    ``name``      the fullest of its usual forms: "Mr Tock" where the book has Tock and Mr Tock
    ``kind``      character, place or thing, by what it does and what stands before it
    ``forms``     each way it is called, as written, with its places; the most frequent first
    ``asked``     "he" or "she" where a title or a kin word asks for it (Mr, Grandma), else ""
    ``pronouns``  "he", "she" or "it", with the places where that can only mean this one
    """

    name: str
    kind: Kind
    forms: Mapping[str, tuple[Span, ...]]
    asked: str = ""
    pronouns: Mapping[str, tuple[Span, ...]] = field(default_factory=dict)

    @property
    def spans(self) -> tuple[Span, ...]:
        """Every place that has the name, in the book's order."""
        return tuple(sorted(span for spans in self.forms.values() for span in spans))

    @property
    def count(self) -> int:
        """How often the book names it."""
        return sum(len(spans) for spans in self.forms.values())

    @property
    def first_page(self) -> int:
        """The 1-based place, among the book's pages, of the page that has it first."""
        return self.spans[0].page

    @property
    def last_page(self) -> int:
        """The 1-based place, among the book's pages, of the page that has it last."""
        return self.spans[-1].page


def names_of(book: Book, analysis: Analysis) -> tuple[Named, ...]:
    """All characters, places and things with a name, in the order in which the book brings them."""
    mentions = mentions_of(book, analysis)
    groups = joined(mentions)
    evidence = [evidence_of(book, analysis, group) for group in groups]
    kinds = [_kind(seen, len(group)) for seen, group in zip(evidence, groups, strict=True)]
    named = [
        Named(name=_fullest(group), kind=kind, forms=_forms(group), asked=_asked(group))
        for group, kind in zip(groups, kinds, strict=True)
    ]
    pronouns = pronouns_of(book, analysis, places_of(named))
    known = (replace(one, pronouns=pronouns.get(who_is(one), {})) for one in named)
    return tuple(sorted(known, key=lambda one: one.spans[0]))


def places_of(names: Iterable[Named]) -> Mapping[Span, tuple[str, str]]:
    """Each place of a character's name, with who that is and the pronoun that its title asks for."""
    return {
        span: (who_is(one), one.asked)
        for one in names
        if one.kind is Kind.CHARACTER
        for span in one.spans
    }


def who_is(one: Named) -> str:
    """The mark by which its traces are known; no noun looks like it."""
    return f"@{one.name}"


def _asked(group: Iterable[Mention]) -> str:
    words = {word.lower().strip(".") for mention in group for word in mention.words}
    asked = {pronoun_of_title(word) for word in words} - {None}
    return (asked.pop() or "") if len(asked) == 1 else ""


def _kind(seen: Evidence, count: int) -> Kind:
    """Without any deed to tell by, a name that wants an article is a thing's: the Salty Sue."""
    if seen.person:
        return Kind.CHARACTER
    if seen.place or seen.at_place > seen.acts + seen.speaks:
        return Kind.PLACE
    if seen.speaks or seen.acts > seen.with_article or 2 * seen.with_article <= count:
        return Kind.CHARACTER
    return Kind.THING


def _forms(group: Iterable[Mention]) -> Mapping[str, tuple[Span, ...]]:
    forms: dict[str, list[Span]] = {}
    for mention in group:
        forms.setdefault(mention.text, []).append(mention.span)
    ordered = sorted(forms.items(), key=lambda form: -len(form[1]))
    return {form: tuple(spans) for form, spans in ordered}


def _fullest(group: Iterable[Mention]) -> str:
    """The longest form that stands at least a third as often as the commonest; an epithet seldom counts."""
    forms = _forms(group)
    most = max(len(spans) for spans in forms.values())
    usual = [
        form
        for form, spans in forms.items()
        if len(spans) == most
        or (3 * len(spans) >= most and form.split()[0].lower() not in EPITHETS)
    ]
    return max(usual, key=lambda form: (len(form.split()), len(forms[form])))
