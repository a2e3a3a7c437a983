"""What is set apart by its type: italics, capitals."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence

from proofkit.book import Span
from proofkit.stylesheet.ground import Ground
from proofkit.stylesheet.sheet import Basis, Row
from proofkit.words.dictionary import dictionary

_MOST_QUOTED = 60  # characters of a passage that are quoted
_MOST_ROWS = 6  # beyond, a few examples tell as much
_EXAMPLES = 3
_IN_ITALICS = "in italics"
_DECIDE_ITALICS = (
    "What italics stand for beyond this, stress or another language, proofkit can’t tell: decide it, "
    "and write it here."
)
_NO_ITALICS = (
    "No italics are seen in this file. Decide how thoughts, sounds and titles are to be set."
)
# A word in capitals, and those that follow it.
_CAPITALS = re.compile(
    r"(?<![\w'’‑-])[^\W\d_a-z](?:[^\W\d_]|['’‑-])+(?:[ ,]+[^\W\d_](?:[^\W\d_]|['’‑-])*)*(?!\w)"
)


def typeface_rows(ground: Ground) -> tuple[Row, ...]:
    """What is in italics, and what in capitals."""
    return (
        *_rows(_IN_ITALICS, _italics(ground)),
        *_rows("in capitals", _capitals(ground)),
    )


def remark_on_italics(rows: Iterable[Row]) -> str:
    """What only a person can say of the rows on typefaces."""
    return _DECIDE_ITALICS if any(row.term == _IN_ITALICS for row in rows) else _NO_ITALICS


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
