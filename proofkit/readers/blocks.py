"""What a reader makes of a file: a flat run of blocks, one a paragraph, in the file's order.

Readers know formats and nothing of books; the stages behind them know books and nothing of formats.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum

from proofkit.book import Role
from proofkit.readers.italics import Italics

# A line end in the file that may be the author's or the editor window's; a newline is the author's.
SOFT = "\r"


class Break(StrEnum):
    """What stands between a block and the one before it."""

    NONE = "none"
    PAGE = "page"  # a page break, a section that starts a page, a form feed
    MARK = "mark"  # an empty heading: a mark that the author set by hand
    ROW = "row"  # a row of a table, which may be a page where nothing else marks pages


class Part(StrEnum):
    """A side of a spread."""

    LEFT = "left"
    RIGHT = "right"


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """One paragraph as it stands in the file.

    ``text``     its characters; ``SOFT`` and newlines are line ends
    ``locator``  finds it in the file again
    ``style``    the file's own name for its style
    ``level``    1 for a main heading, 2 for one below it, …; 0 for none
    ``bold``     whether all of it is bold
    ``italics``  what of it is italic
    ``before``   the break before it; the text may be empty when only the break counts
    ``part``     the side of the spread that a table gives it
    ``role``     what the format itself says it is (a page number field, a footnote)
    """

    text: str
    locator: str = ""
    style: str = ""
    level: int = 0
    bold: bool = False
    italics: Italics = field(default_factory=Italics)
    before: Break = Break.NONE
    part: Part | None = None
    role: Role | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """All that a reader found in a file: the blocks, the file's own title, remarks for the author."""

    blocks: tuple[Block, ...]
    title: str = ""
    remarks: tuple[str, ...] = ()


def plain(text: str) -> str:
    """A block's text with every line end as a space, for patterns that look at words alone."""
    return text.replace(SOFT, " ").replace("\n", " ").strip()
