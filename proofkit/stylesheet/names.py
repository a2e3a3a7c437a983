"""The names of a style sheet: characters, places, things, each with where it comes first and last."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence, Set

from proofkit.book import Span
from proofkit.habits.names import Kind, Named
from proofkit.stylesheet.about_names import is_shown, kin_rows, what_it_is, without_capital
from proofkit.stylesheet.ground import Ground
from proofkit.stylesheet.sheet import Basis, Other, Part, Row
from proofkit.words.alike import plain
from proofkit.words.dictionary import dictionary
from proofkit.words.lists import word_set

PARTS = {Kind.CHARACTER: Part.CHARACTERS, Kind.PLACE: Part.PLACES, Kind.THING: Part.THINGS}

_CALENDAR = word_set(
    """
    monday tuesday wednesday thursday friday saturday sunday january february march april june july
    august september october november december
    """
)
# What these families call a slip in a name is no name.
_NAME_SLIPS = ("consistency", "spelling", "marks", "english")


def name_rows(ground: Ground, sounds: Set[str]) -> Mapping[Part, Sequence[Row]]:
    """The characters, the places and the things with a name, in the order in which the book brings them.

    A spelling that a check calls a slip stands beside the name that it should be. A name that was
    decided is there even if this draft doesn't have it. ``sounds`` (in lower case) are no names.
    """
    slips, sound = _sorted_out(ground)
    rows: dict[Kind, list[Row]] = defaultdict(list)
    for one in sound:
        if not _is_no_name(ground, one, sounds):
            kind = one.kind
            if kind is Kind.CHARACTER and not is_shown(ground, one):
                kind = Kind.THING  # that is, among the other names
            rows[kind].append(_row(ground, one, slips.get(one.name, ())))
    rows[Kind.CHARACTER] += kin_rows(ground)
    rows[Kind.CHARACTER] += _decided_and_absent(ground)
    return {part: sorted(rows[kind], key=_first) for kind, part in PARTS.items()}


def _first(row: Row) -> tuple[bool, tuple[Span, ...]]:
    """Sorts rows as the book brings them; what is not in it comes last."""
    places = sorted(s for spans in (row.places, *(o.places for o in row.others)) for s in spans)
    return not places, tuple(places[:1])


def _is_no_name(ground: Ground, one: Named, sounds: Set[str]) -> bool:
    """Whether it is what every dictionary has with its capital, and nobody's name.

    A people of many (Kenyans), a day (Sundays), a short form (I'm), or a sound that is cried.
    """
    known = dictionary(ground.analysis.english)
    name = one.name
    people = name.endswith("ans") and name[:-1] in known.names
    short_form = name.startswith(("I'", "I’"))
    return people or short_form or name.rstrip("s").lower() in _CALENDAR or name.lower() in sounds


def _sorted_out(
    ground: Ground,
) -> tuple[Mapping[str, list[Other]], list[Named]]:
    """The misspelt names by the name that they should be, and the names that stand."""
    slips: dict[str, list[Other]] = defaultdict(list)
    sound = []
    for one in ground.named:
        meant = _meant(ground, one)
        if meant is None:
            sound.append(one)
        elif meant != one.name:
            slips[meant].append(Other(form=one.name, places=one.spans))
    return slips, sound


def _meant(ground: Ground, one: Named) -> str | None:
    """The name that should stand wherever this one stands, if a check says so; itself if it is no name."""
    found = [ground.issue_at(span, _NAME_SLIPS) for span in one.spans]
    if not all(found) or one.name in ground.style.names:
        return None
    issue = found[0]
    if issue is None or not issue.suggestions:
        return None
    read = one.name.replace(issue.quote, issue.suggestions[0])
    others = [other.name for other in ground.named if other is not one]
    return next((name for name in others if _is_part(read, name)), one.name)


def _is_part(short: str, full: str) -> bool:
    """Whether all words of the one are words of the other: Tock, Mr Tock."""
    return bool(short.split()) and set(_words(short)) <= set(_words(full))


def _row(ground: Ground, one: Named, slips: Sequence[Other]) -> Row:
    decided = next((name for name in ground.style.names if _same(name, one)), None)
    decided = decided or next((word for word in ground.words if word == one.name), None)
    form = decided or one.name
    # Mr. Tock beside Mr Tock is another way to write it; Tock alone is but shorter.
    rivals = {
        f: spans
        for f, spans in one.forms.items()
        if f != form and plain_form(f) == plain_form(form)
    }
    short = [f for f in one.forms if f != form and f not in rivals]
    places = tuple(sorted(s for f in (form, *short) for s in one.forms.get(f, ())))
    others = (*(Other(form=f, places=spans) for f, spans in rivals.items()), *slips)
    basis = Basis.DECIDED if decided else Basis.MOSTLY if others else Basis.ALWAYS
    return Row(
        term=form,
        form=form,
        basis=basis,
        places=places,
        others=others,
        note=_note(ground, one, short),
    )


def _same(decided: str, one: Named) -> bool:
    return any(plain_form(decided) == plain_form(form) for form in (one.name, *one.forms))


def plain_form(name: str) -> str:
    """The name without capitals, accents and points: forms that agree in it are one name."""
    return plain(name.lower()).replace(".", "").replace("-", " ")


def _words(name: str) -> Iterator[str]:
    return iter(plain_form(name).split())


def _note(ground: Ground, one: Named, short: Sequence[str]) -> str:
    """What it is, who it is called, how the same word stands where it is no name."""
    called = f"also called {_listed(short)}" if short else ""
    lower = without_capital(ground, one.name)
    return "; ".join(filter(None, (what_it_is(ground, one), _pronoun(one), called, lower)))


def _pronoun(one: Named) -> str:
    """The pronoun, where the book shows it more than once and no other half as often."""
    ordered = sorted(one.pronouns, key=lambda word: -len(one.pronouns[word]))
    counts = [len(one.pronouns[word]) for word in ordered] + [0, 0]
    return ordered[0] if counts[0] > 1 and counts[0] >= 2 * counts[1] else ""


def _listed(names: Sequence[str]) -> str:
    *first, last = names
    return f"{', '.join(first)} and {last}" if first else last


def _decided_and_absent(ground: Ground) -> Iterator[Row]:
    for name in ground.style.names:
        if not any(_same(name, one) for one in ground.named):
            places = _places(ground, name)
            note = "" if places else "not in this draft"
            yield Row(term=name, form=name, basis=Basis.DECIDED, places=places, note=note)


def _places(ground: Ground, name: str) -> tuple[Span, ...]:
    """Where the words of a name stand, for a name that is not seen as one."""
    return tuple(
        page.span(at, at + len(name)) for page in ground.book.pages for at in _all(page.prose, name)
    )


def _all(text: str, part: str) -> Iterator[int]:
    at = text.find(part)
    while at >= 0:
        yield at
        at = text.find(part, at + len(part))
