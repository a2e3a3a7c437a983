"""The fixed matters of a style sheet: English, numbers, punctuation, each with the form that the book has."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence

from proofkit.habits.matters import MATTERS
from proofkit.stylesheet.ground import Ground, row_of
from proofkit.stylesheet.sheet import Part, Row

# What a matter is called on the sheet, where its name in proofkit.toml is no phrase.
_TERMS: Mapping[str, str] = {
    "mark-shape": "shape of the marks",
    "dash-breaking-off": "dash where speech breaks off",
    "space-before-ellipsis": "before an ellipsis",
    "space-after-ellipsis": "after an ellipsis",
    "space-after-stop": "spaces after a full stop",
    "title-point": "point after Mr, Mrs, Dr",
}
# The parts of the matters that are not punctuation.
_PARTS: Mapping[str, Part] = {}


def matter_rows(ground: Ground) -> Mapping[Part, Sequence[Row]]:
    """The rows of every fixed matter that the book does or the author decided, by their part."""
    rows: dict[Part, list[Row]] = defaultdict(list)
    for part, row in _rows(ground):
        rows[part].append(row)
    return rows


def _rows(ground: Ground) -> Iterator[tuple[Part, Row]]:
    for matter in MATTERS:
        usage = matter.usage(ground.book, ground.analysis)
        term = _TERMS.get(matter.name, matter.name.replace("-", " "))
        row = row_of(usage, ground.style.form(matter.name), term=term)
        if row:
            yield _PARTS.get(matter.name, Part.PUNCTUATION), row
