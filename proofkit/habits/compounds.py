"""How the book writes its compounds: bedtime, bed-time or bed time.

Only words that do the same work are one matter. A hyphen that joins words before a noun (a well-known
tale, a merry-go-round ride) is right beside the same words apart elsewhere (the tale is well known), so
open and hyphened are compared either before a noun or elsewhere; a closed word is the same anywhere.
New Hart's Rules 3.3.3 asks that hyphens be used consistently within a text; the MHRA guide 2.3 and the
Chicago manual 7.89 tell the two places of an adjective apart.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from proofkit.analysis import Analysis
from proofkit.book import Book, Span
from proofkit.habits._compound_keys import key_of
from proofkit.habits._compound_places import Place, places_in
from proofkit.habits._sound_words import is_echo
from proofkit.habits.usage import Usage

BEFORE_NOUN = " (before a noun)"


@dataclass(frozen=True, slots=True, kw_only=True)
class _Group:
    """The places of one compound, by whether they stand before a noun."""

    before: tuple[Place, ...]
    elsewhere: tuple[Place, ...]


def compound_usages(
    book: Book, analysis: Analysis, decided: Sequence[str] = ()
) -> tuple[Usage, ...]:
    """Each compound that the book has with a hyphen, or in two ways, or that is among ``decided``.

    Forms are the compound in lower case and in the singular, as it would be written: "ice cream",
    "ice-cream", "icecream". ``matter`` is the form that the book has most; after it stands
    " (before a noun)" where the hyphens stand there only: elsewhere the words may be open.
    """
    wanted = {
        key_of(word) for word in decided if not is_echo(tuple(re.split("[- ]", word.lower())))
    }
    groups: dict[str, list[Place]] = defaultdict(list)
    for place in places_in(book, analysis, wanted):
        groups[place.key].append(place)
    found = [usage for key in sorted(groups) for usage in _usages(groups[key], key in wanted)]
    return tuple(found)


def decided_compound(matter: str, words: Sequence[str]) -> str | None:
    """How the author's list of words writes the compound of a matter, in lower case, or None."""
    key = key_of(matter.removesuffix(BEFORE_NOUN))
    return next((word.lower() for word in words if key_of(word) == key), None)


def joined_as(written: str, form: str) -> str:
    """A compound's letters as they are written, with the hyphens or spaces of ``form``."""
    letters = "".join(letter for letter in written if letter not in "-‑ \u00a0\n")
    joined, at = "", 0
    for mark in form:
        if mark in "- ":
            joined += mark
        else:
            joined += letters[at : at + 1]
            at += 1
    return joined + letters[at:]


def _usages(places: Sequence[Place], is_decided: bool) -> Iterator[Usage]:  # noqa: FBT001 - two kinds of one thing
    group = _Group(
        before=tuple(p for p in places if p.before_noun),
        elsewhere=tuple(p for p in places if not p.before_noun),
    )
    if _agree(group.before, group.elsewhere):
        only_before = all(place.before_noun and place.shape == "-" for place in places)
        whole = _usage(places, BEFORE_NOUN if only_before else "")
        if len(whole.places) > 1 or is_decided or _has_hyphen(places):
            yield whole
        return
    for part, note in ((group.before, BEFORE_NOUN), (group.elsewhere, "")):
        if part and (len(_usage(part, "").places) > 1 or is_decided or _has_hyphen(part)):
            yield _usage(part, note)


def _agree(before: Sequence[Place], elsewhere: Sequence[Place]) -> bool:
    """Whether all places can be compared: nowhere a hyphen before a noun beside open words elsewhere."""
    return not (
        any(place.shape == "-" for place in before)
        and any(place.shape == " " for place in elsewhere)
    )


def _has_hyphen(places: Sequence[Place]) -> bool:
    return any(place.shape != " " and "-" in place.form for place in places)


def _usage(places: Sequence[Place], note: str) -> Usage:
    forms: dict[str, list[Span]] = defaultdict(list)
    for place in places:
        forms[place.form].append(place.span)
    return Usage(
        matter=_usual(forms) + note,
        places={form: tuple(sorted(spans)) for form, spans in forms.items()},
    )


def _usual(forms: Mapping[str, Sequence[Span]]) -> str:
    return max(sorted(forms), key=lambda form: len(forms[form]))
