"""Plain text files (.txt): paragraphs parted by blank lines or each on one long line."""

from __future__ import annotations

from collections.abc import Iterator

from proofkit.readers.blocks import SOFT, Block, Break, Source
from proofkit.readers.characters import kept
from proofkit.readers.encoding import decoded

# No editor or mail program wraps wider: in a file with longer lines, every line end is the author's.
_WIDEST_WRAP = 110
_LONGEST_VERSE = 60


def read_plain_text(data: bytes, name: str) -> Source:
    """The blocks of a plain text file. ``name`` is the file's name, for sentences."""
    text, remarks = decoded(data, name)
    lines = kept(text).split("\n")
    wrapped = max(map(len, lines), default=0) <= _WIDEST_WRAP
    return Source(blocks=tuple(_blocks(lines, wrapped=wrapped)), remarks=remarks)


def _blocks(lines: list[str], *, wrapped: bool) -> Iterator[Block]:
    held: list[str] = []
    start = 1
    for number, whole in enumerate(lines, 1):
        for index, line in enumerate(whole.split("\f")):
            if index:
                yield from _paragraphs(held, start, wrapped=wrapped)
                held = []
                yield Block(text="", before=Break.PAGE)
            if line.strip():
                start = start if held else number
                held.append(line)
            elif not index:
                yield from _paragraphs(held, start, wrapped=wrapped)
                held = []
    yield from _paragraphs(held, start, wrapped=wrapped)


def _paragraphs(lines: list[str], start: int, *, wrapped: bool) -> Iterator[Block]:
    if not lines:
        return
    if wrapped:
        yield Block(text=SOFT.join(lines), locator=f"line {start}")
    elif max(map(len, lines)) <= _LONGEST_VERSE:
        yield Block(text="\n".join(lines), locator=f"line {start}")
    else:
        for number, line in enumerate(lines, start):
            yield Block(text=line, locator=f"line {number}")
