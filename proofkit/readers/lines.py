"""Line ends: which ones the author meant, and which ones a window's edge made.

Plain text and Markdown do not tell. A line end counts as the author's where the lines look like
verse or a list: three or more short lines that each start as a line of verse does, or two where the
next word would have had room on the line before. All others are joined by one space.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from itertools import pairwise

from proofkit.readers.blocks import SOFT, Block

# Wrapped text rarely runs narrower in an editor or wider in a message; verse is rarely longer.
_LONGEST_VERSE = 60
_FEWEST_VERSE_LINES = 3
_VERSE_START = re.compile(r"[\W_]*[A-Z0-9À-Þ]")


def page_width(blocks: Iterable[Block]) -> int:
    """The width that the file's own lines were wrapped to: its longest line that has one after it."""
    return max(
        (len(line) for block in blocks for line in block.text.split(SOFT)[:-1]),
        default=0,
    )


def joined(text: str, width: int) -> str:
    """A block's text with its line ends settled; every line is trimmed at both ends.

    ``width`` is what the file's lines were wrapped to, in characters.
    """
    lines = [line.strip(" ") for line in text.replace("\t", " ").split(SOFT)]
    lines = [line for line in lines if line]
    glue = "\n" if _on_purpose(lines, width) else " "
    whole = glue.join(lines)
    return "\n".join(line.strip(" ") for line in whole.split("\n")).strip()


def _on_purpose(lines: list[str], width: int) -> bool:
    if len(lines) < 2 or not all(_VERSE_START.match(line) for line in lines):
        return False
    if max(map(len, lines)) > _LONGEST_VERSE:
        return False
    return len(lines) >= _FEWEST_VERSE_LINES or _had_room(lines, width)


def _had_room(lines: list[str], width: int) -> bool:
    """Whether the next line's first word would have fitted on each line but the last."""
    return all(len(line) + 1 + len(after.split(" ")[0]) <= width for line, after in pairwise(lines))
