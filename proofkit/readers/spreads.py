"""Which spread each page lies on, counted as the trade does.

"Spread 3" is spread 3. Page numbers: page 1 stands alone and lies on no spread, pages 2–3 are spread
1, pages 4–5 spread 2, …; an author whose pairs begin with odd numbers ("Pages 1–2") counts otherwise,
and there pages 1–2 are spread 1. Views without a number, and those with a number that may count
either, are spreads in their order. Where some pages have numbers, one without lies on an unknown
spread. Only story lies on spreads.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from proofkit.book import Page, Role
from proofkit.readers.blocks import Part
from proofkit.readers.marks import Kind, Mark
from proofkit.readers.pagination import Leaf


def folios_of(leaf: Leaf) -> tuple[int, ...]:
    """The page numbers that a leaf's label gives; of a pair, each side has its own."""
    folios = leaf.mark.folios if leaf.mark else ()
    if len(folios) == 2 and leaf.part:
        return folios[:1] if leaf.part is Part.LEFT else folios[1:]
    return folios


def numbered(pages: Sequence[Page], leaves: Sequence[Leaf]) -> list[Page]:
    """The pages with the spreads that they lie on; ``leaves`` are what they were made of."""
    marks = [leaf.mark for leaf in leaves if leaf.mark]
    counted = any(mark.kind in {Kind.PAGE, Kind.SPREAD} for mark in marks)
    shift = _shift(marks)
    found, views, before = [], 0, None
    for page, leaf in zip(pages, leaves, strict=True):
        spread = None
        if page.role is Role.STORY:
            views += not _same_view(before, leaf)
            spread = _spread(leaf.mark, shift) if counted else views
            before = leaf
        found.append(replace(page, spread=spread))
    return found


def _spread(mark: Mark | None, shift: int) -> int | None:
    if mark is None or not mark.numbers:
        return None
    if mark.kind is Kind.SPREAD:
        return mark.numbers[0]
    return (mark.numbers[0] + shift) // 2 or None


def _shift(marks: Sequence[Mark]) -> int:
    """1 for an author whose pairs begin with odd numbers, else 0."""
    pairs = [mark.folios[0] for mark in marks if len(mark.folios) == 2]
    return int(sum(first % 2 for first in pairs) * 2 > len(pairs))


def _same_view(before: Leaf | None, leaf: Leaf) -> bool:
    return (
        before is not None
        and before.mark is leaf.mark
        and before.part is Part.LEFT
        and leaf.part is Part.RIGHT
    )
