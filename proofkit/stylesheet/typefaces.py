"""What is set apart by its type: italics, capitals."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence

from proofkit.book import Span
from proofkit.stylesheet.ground import Ground
from proofkit.stylesheet.sheet import Basis, Part, Row, Section
from proofkit.words.dictionary import dictionary

_MOST_QUOTED = 60  # characters of a passage that are quoted
_MOST_ROWS = 6  # beyond, a few examples tell as much
_EXAMPLES = 3
_DECIDE_ITALICS = (
    "Whether italics stand for thoughts, sounds, titles or stress, proofkit can’t tell: "
    "decide it, and write it here."
)
_NO_ITALICS = (
    "No italics are seen in this file. Decide how thoughts, sounds and titles are to be set."
)
# A word in capitals, and those that follow it.
_CAPITALS = re.compile(
    r"(?<![\w'’‑-])[^\W\d_a-z](?:[^\W\d_]|['’‑-])+(?:[ ,]+[^\W\d_](?:[^\W\d_]|['’‑-])*)*(?!\w)"
)


def typefaces(ground: Ground, habits: Sequence[Row]) -> Section:
    """What is in italics and what in capitals, with what only a person can say of it."""
    italics = _italics(ground)
    rows = (*habits, *_rows("in italics", italics), *_rows("in capitals", _capitals(ground)))
    return Section(
        part=Part.TYPEFACES, rows=rows, remark=_DECIDE_ITALICS if italics else _NO_ITALICS
    )


def _rows(term: str, places: Mapping[str, Sequence[Span]]) -> Iterator[Row]:
    """A row for each passage; where there are many, one row with the first of them."""
    if len(places) > _MOST_ROWS:
        spans = sorted(span for own in places.values() for span in own)
        examples = [_short(words) for words in list(places)[:_EXAMPLES]]
        form = "; ".join([*examples, "…"])
        yield Row(
            term=term,
            form=form,
            basis=Basis.ALWAYS,
            places=tuple(spans),
            note=f"{len(places)} passages in all",
        )
        return
    for words, own in places.items():
        yield Row(term=term, form=_short(words), basis=Basis.ALWAYS, places=tuple(own))


def _short(words: str) -> str:
    return words if len(words) <= _MOST_QUOTED else words[: _MOST_QUOTED - 1].rstrip() + "…"


def _italics(ground: Ground) -> Mapping[str, list[Span]]:
    places: dict[str, list[Span]] = defaultdict(list)
    for page in ground.book.story_pages:
        for start, end in page.emphasis:
            words = " ".join(page.prose[start:end].split())
            if words:
                places[words].append(page.span(start, end))
    return places


def _capitals(ground: Ground) -> Mapping[str, list[Span]]:
    """Words in capitals for loudness, or on a sign: words that are no abbreviations."""
    known = dictionary(ground.analysis.english)
    places: dict[str, list[Span]] = defaultdict(list)
    for page in ground.book.story_pages:
        for match in _CAPITALS.finditer(page.prose):
            words = match.group()
            loud = any(
                len(word) > 2 and word not in known.abbreviations
                for word in re.split("[ ,]+", words)
            )
            if words.isupper() and loud:
                places[words].append(page.span(*match.span()))
    return places
