"""Blocks to events: the marks and sides that stand in the blocks' lines, taken out of the text.

A mark is a line of its own or the start of a block's first line; what shares its line stays text. A
line of a block is enough, since authors put a mark and its text into one paragraph with a line end.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from proofkit.book import Role
from proofkit.readers.blocks import SOFT, Block, Break, Part
from proofkit.readers.marks import BARE, Mark, mark_in, matter_mark, number_mark, part_in

Event = Block | Mark | Part | Break

_LINE_END = re.compile(f"([{SOFT}\n])")
_LONGEST_LABEL = 90


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """Which lines count as marks: "Page 3" and the like, numbers alone, "Title page" and the like, "Left:" and "Right:"."""

    labels: bool = True
    numbers: bool = False
    matters: bool = False
    sides: bool = False


def events_of(blocks: Iterable[Block], reading: Reading) -> Iterator[Event]:
    """The blocks in order, with breaks, marks and sides between them."""
    bare_level = 0
    for block in blocks:
        if block.before is Break.MARK:
            bare_level = block.level
            yield BARE
        elif block.before is not Break.NONE:
            yield block.before
        elif bare_level and block.level == bare_level and not mark_in(block.text, heading=True):
            yield BARE
        if block.part:
            yield block.part
        if block.role is not None:
            yield replace(block, before=Break.NONE, part=None)
        else:
            yield from _from_lines(block, reading)


def _from_lines(block: Block, reading: Reading) -> Iterator[Event]:
    held, start = "", 0
    for index, (line, end) in enumerate(_lines(block.text)):
        found = _found(block, line, reading, first=index == 0)
        if found is None:
            start = start if held else index
            held += line + end
            continue
        yield from _text(block, held, start)
        event, rest = found
        yield event
        held, start = rest + end if rest else "", index
        if isinstance(event, Mark) and event.aside:
            yield replace(at_line(block, index), text=rest, role=Role.NOTE)
            held = ""
    yield from _text(block, held, start)


def _found(
    block: Block, line: str, reading: Reading, *, first: bool
) -> tuple[Mark | Part, str] | None:
    """The mark or side that a line begins with and the text after it; only a first line may have any."""
    short = len(line) <= _LONGEST_LABEL
    if not (first or short):
        return None
    heading = short and (block.level > 0 or block.bold)
    mark = mark_in(line, heading=heading) if reading.labels else None
    if mark is None and short:
        mark = _minor_mark(line, reading)
    if mark:
        return (mark, mark.rest) if first or not mark.rest else None
    side = part_in(line) if reading.sides else None
    return side if side and (first or not side[1]) else None


def _minor_mark(line: str, reading: Reading) -> Mark | None:
    mark = number_mark(line) if reading.numbers else None
    return mark or (matter_mark(line) if reading.matters else None)


def _text(block: Block, text: str, line: int) -> Iterator[Block]:
    text = text.strip(" \t\n" + SOFT)
    if text:
        yield replace(at_line(block, line), text=text)


def at_line(block: Block, index: int) -> Block:
    """The block as it begins ``index`` lines further down, where its locator counts lines."""
    kind, _, number = block.locator.partition(" ")
    locator = f"line {int(number) + index}" if kind == "line" else block.locator
    return replace(block, locator=locator, before=Break.NONE, part=None)


def _lines(text: str) -> Iterator[tuple[str, str]]:
    """The lines of a block, each with the line end after it."""
    parts = _LINE_END.split(text)
    yield from zip(parts[::2], [*parts[1::2], ""], strict=True)
