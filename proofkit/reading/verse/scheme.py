"""The rhyme scheme of a poem, and where a stanza falls short of it.

For every length of stanza the known forms are tried: couplets, ballad (only the even lines rhyme),
alternate, enclosed, limerick, tail rhyme, all alike. The form that the stanzas of that length fulfil best
is theirs, if at least FULFILLED of its rhymes are there in the whole poem; else the poem has no scheme.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from proofkit.reading.verse.poem import RhymeKind
from proofkit.reading.verse.rhyme import rhyme_of_ends
from proofkit.settings import English

FULFILLED = 0.6
Ends = tuple[str, ...]  # the last words of a line, at most two
Kinds = Mapping[tuple[int, int], RhymeKind]

_WORTH = {
    RhymeKind.PERFECT: 1.0,
    RhymeKind.IDENTICAL: 0.8,
    RhymeKind.NEAR: 0.5,
    RhymeKind.EYE: 0.5,
    RhymeKind.NONE: -0.7,
}
_UNASKED = 0.6  # a perfect rhyme that the form does not ask for counts against it
# The stanzas of old; x rhymes with nothing. Longer ones are made of these.
_FORMS = {
    2: ("AA",),
    3: ("AAA", "AAx", "xAA"),
    4: ("AABB", "xAxA", "ABAB", "ABBA", "AAAA", "AAxA"),
    5: ("AABBA", "xAxAA", "ABABB", "AABBB", "AAAAA", "ABAAB"),
    6: (
        "AABCCB",
        "xAxAxA",
        "xAxABB",
        "ABABCC",
        "AABBCC",
        "AAxBBx",
        "ABABAB",
        "xxAxxA",
        "AAABBB",
        "AAABAB",
    ),
    8: ("AAABCCCB", "ABABCDCD", "xAxAxBxB", "AABBCCDD", "xAxAxAxA", "AABCCBDD"),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Schemed:
    """The forms of a poem's stanzas: by their number of lines. ``kept``: the share of rhymes that are there."""

    forms: Mapping[int, str]
    asked: int
    kept: float

    @property
    def clear(self) -> bool:
        """Whether the poem rhymes by a scheme."""
        return self.asked > 0 and self.kept >= FULFILLED


def kinds_of(ends: Sequence[Ends], english: English) -> Kinds:
    """How each two lines of a stanza rhyme; pairs that do not rhyme are left out."""
    found = {}
    for second in range(len(ends)):
        for first in range(max(0, second - 7), second):
            kind = rhyme_of_ends(ends[first], ends[second], english)
            if kind is not RhymeKind.NONE:
                found[first, second] = kind
    return found


def schemed(stanzas: Sequence[Kinds], lengths: Sequence[int]) -> Schemed:
    """The forms that the stanzas fulfil best, each stanza given by its rhymes and its number of lines."""
    by_length: dict[int, list[Kinds]] = defaultdict(list)
    for kinds, length in zip(stanzas, lengths, strict=True):
        by_length[length].append(kinds)
    forms = {length: _best_form(length, own) for length, own in by_length.items()}
    there = [
        pair in kinds
        for kinds, length in zip(stanzas, lengths, strict=True)
        for pair in pairs_of(forms[length])
    ]
    return Schemed(forms=forms, asked=len(there), kept=sum(there) / len(there) if there else 0.0)


def _best_form(length: int, stanzas: Sequence[Kinds]) -> str:
    worth = {form: sum(_worth(form, kinds) for kinds in stanzas) for form in forms_of(length)}
    return max(worth, key=lambda form: worth[form])


def forms_of(length: int) -> tuple[str, ...]:
    """The forms that a stanza of so many lines may have; lower-case x for a line without a rhyme."""
    if length in _FORMS:
        return _FORMS[length]
    if length < 2:
        return ("x" * length,)
    return (_couplets(length), _repeated("xAxA", length), _repeated("ABAB", length))


def _couplets(length: int) -> str:
    return "".join(chr(ord("A") + at // 2) for at in range(length - length % 2)) + "x" * (
        length % 2
    )


def _repeated(form: str, length: int) -> str:
    letters, written = 0, ""
    while len(written) < length:
        written += "".join(c if c == "x" else chr(ord(c) + letters) for c in form)
        letters += len(set(form) - {"x"})
    written = written[:length]
    return "".join("x" if written.count(c) < 2 else c for c in written)


def pairs_of(form: str) -> tuple[tuple[int, int], ...]:
    """Each line that a form lets rhyme, with the nearest line before it that it rhymes with."""
    pairs = []
    for at, letter in enumerate(form):
        before = form.rfind(letter, 0, at)
        if letter != "x" and before >= 0:
            pairs.append((before, at))
    return tuple(pairs)


def _worth(form: str, kinds: Kinds) -> float:
    asked = pairs_of(form)
    worth = sum(_WORTH[kinds.get(pair, RhymeKind.NONE)] for pair in asked)
    for (first, second), kind in kinds.items():
        alike = form[first] == form[second] != "x"
        if kind is RhymeKind.PERFECT and not alike:
            worth -= _UNASKED
    return worth


def letters_of(length: int, kinds: Kinds, form: str | None) -> str:
    """A stanza's own scheme, A, B, C in turn: "ABCB" where only the second and fourth line rhyme.

    Perfect rhymes count wherever they are, the others only where the poem's form asks for one.
    """
    wanted = set(pairs_of(form)) if form else set()
    groups = list(range(length))
    for (first, second), kind in sorted(kinds.items()):
        if kind in (RhymeKind.PERFECT, RhymeKind.IDENTICAL) or (first, second) in wanted:
            old, new = groups[second], groups[first]
            groups = [new if group == old else group for group in groups]
    names: dict[int, str] = {}
    for group in groups:
        names.setdefault(group, chr(ord("A") + len(names) % 26))
    return "".join(names[group] for group in groups)
