"""The fixed matters of a style sheet: English, numbers, punctuation, each with the form that the book has."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence

from proofkit.habits.matters import MATTERS
from proofkit.stylesheet.ground import Ground, row_of
from proofkit.stylesheet.sheet import Part, Row

# What a matter is called on the sheet, where its name in proofkit.toml, hyphens apart, is no phrase.
_TERMS: Mapping[str, str] = {
    "ok": "OK",
    "nesting": "marks inside marks",
    "stop-and-mark": "stop beside a mark",
    "new-speaker": "a new speaker",
    "possessive-of-s": "owners in -s",
    "capital-after-colon": "after a colon",
    "titles": "titles of books",
    "mark-shape": "shape of the marks",
    "dash-breaking-off": "dash, speech broken off",
    "space-before-ellipsis": "before an ellipsis",
    "space-after-ellipsis": "after an ellipsis",
    "space-after-stop": "spaces after a stop",
    "title-point": "Mr, Mrs, Dr",
    "ise-or-ize": "-ise or -ize",
    "a-m-and-p-m": "a.m. and p.m.",
    "hour-before-o-clock": "hour before o’clock",
}
# The parts of the matters that are not punctuation.
_PARTS: Mapping[str, Part] = {
    "thoughts": Part.TYPEFACES,
    "sounds": Part.TYPEFACES,
    "titles": Part.TYPEFACES,
    "ise-or-ize": Part.ENGLISH,
    "past-forms": Part.ENGLISH,
    "ok": Part.WORDS,
    "numbers": Part.NUMBERS,
    "ordinals": Part.NUMBERS,
    "thousands": Part.NUMBERS,
    "dates": Part.NUMBERS,
    "times-in-figures": Part.NUMBERS,
    "a-m-and-p-m": Part.NUMBERS,
    "hour-before-o-clock": Part.NUMBERS,
}


def matter_rows(ground: Ground) -> Mapping[Part, Sequence[Row]]:
    """For every part the rows of the fixed matters that the book does or the author decided."""
    rows: dict[Part, list[Row]] = {part: [] for part in Part}
    for part, row in _rows(ground):
        rows[part].append(row)
    return rows


def _rows(ground: Ground) -> Iterator[tuple[Part, Row]]:
    for matter in MATTERS:
        usage = matter.usage(ground.book, ground.analysis)
        name = "-".join(re.findall(r"[a-z]+", matter.name.lower()))
        term = _TERMS.get(name, name.replace("-", " "))
        row = row_of(usage, ground.style.form(matter.name), term=term)
        if row:
            yield _PARTS.get(name, Part.PUNCTUATION), row
