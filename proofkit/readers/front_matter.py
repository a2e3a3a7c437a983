"""What stands before the story: title, author line, dedication, and words about the manuscript."""

from __future__ import annotations

import re
from dataclasses import replace

from proofkit.book import Role, count_words
from proofkit.readers.blocks import SOFT, Block, plain
from proofkit.readers.events import at_line
from proofkit.readers.pagination import Leaf
from proofkit.readers.titles import is_author, is_name, is_sentence, title_of, title_words

_DEDICATION = re.compile(
    r"(?:for|to) (?:[A-ZÀ-Þ]|my |our |all |every|the (?:children|child|real|memory|one)|those |anyone "
    r"|you\b)|in (?:loving )?memory of |dedicated to |(?:with )?(?:love|thanks) (?:and \w+ )?to ",
)
# A dedication makes no statement of its own: what a verb does in it hangs on "who".
_STATEMENT = re.compile(
    r"\b(?:was|were|had|have|has|did|does|do|said|went|came|saw|got|made|took|ate|ran|sat|put|gave|can"
    r"|will|could|would|is|are|it|he|she|they|we|I|(?!beloved)[a-z]+ed)\b"
)
_ABOUT_MANUSCRIPT = re.compile(
    r"\bwords?\b.*\d|\d.*\bwords\b|\bword count\b|\bages?\b.*\d|\bpicture book\b|\bmanuscript\b|\bdraft\b"
    r"|\bsynopsis\b|\bpitch\b|@|\bhttps?:|\bwww\.|\b(?:tel|phone|email|e-mail|address)\b|\bgenre\b"
    r"|\bsubmi(?:tted|ssion)\b|\bagent\b|\bversion \d",
    re.IGNORECASE,
)
_MOST_LINES_OF_A_TITLE_PAGE = 12
_LONGEST_DEDICATION = 30


def is_dedication(block: Block) -> bool:
    """Whether a block by itself reads as a dedication: "For Sam, who likes geese"."""
    text = plain(block.text)
    head = re.split(r"\b(?:who|whose|whom|that|which|because|when)\b", text, maxsplit=1)[0]
    start = text[:1].lower() + text[1:]
    return (
        count_words(text) <= _LONGEST_DEDICATION
        and bool(_DEDICATION.match(start))
        and not _STATEMENT.search(head)
    )


def is_front(leaf: Leaf, known: str, *, first: bool) -> bool:
    """Whether a leaf by itself is a title page: a title or an author line, and no sentence.

    ``known`` is the title as far as it is known. On any leaf but the ``first`` unnumbered one, the
    title must be that or have an author line, since a page of the story may look like a title.
    """
    blocks = [b for b in _with_title_apart(leaf.blocks) if b.role is None]
    texts = [plain(block.text) for block in blocks]
    if not blocks or len(blocks) > _MOST_LINES_OF_A_TITLE_PAGE:
        return False
    if any(is_sentence(text) and count_words(text) >= 8 for text in texts):
        return False
    if any(map(is_author, blocks)):
        return True
    if known and texts[0].casefold() == known.casefold():
        return True
    at = title_of(blocks, alone=False, known=known) if first else None
    return at is not None and not any(map(is_sentence, texts[:at] + texts[at + 1 :]))


def mark_front(leaf: Leaf, *, alone: bool, known: str) -> str:
    """Give the front matter on a leaf its roles; the title found, or "".

    ``alone``: the story starts on a later leaf, so all that is here is front matter.
    """
    title = ""
    leaf.blocks = _with_title_apart(leaf.blocks)
    blocks = leaf.blocks
    at = title_of(blocks[: None if alone else 4], alone=alone, known=known)
    if at is not None:
        blocks[at] = replace(blocks[at], role=Role.TITLE)
        title = title_words(blocks[at])
    story = False
    for index, block in enumerate(blocks):
        if alone and block.role is Role.NOTE and is_author(block):
            blocks[index] = replace(block, role=Role.AUTHOR)
        if block.role is not None:
            continue
        role = None if story else _front_role(blocks, index, after_title=at, alone=alone)
        story = role is None and not alone
        blocks[index] = replace(block, role=role)
    return title


def _with_title_apart(blocks: list[Block]) -> list[Block]:
    """The blocks with a title and the author's line below it, written as one paragraph, as two."""
    if not blocks or blocks[0].role is not None:
        return blocks
    lines = re.split(rf"[{SOFT}\n]", blocks[0].text)
    whole = [replace(at_line(blocks[0], i), text=line.strip()) for i, line in enumerate(lines)]
    if 2 <= len(whole) <= 4 and any(map(is_author, whole[1:])):
        return [*whole, *blocks[1:]]
    return blocks


def _front_role(
    blocks: list[Block], index: int, *, after_title: int | None, alone: bool
) -> Role | None:
    block = blocks[index]
    if block.style.casefold() == "subtitle":
        return Role.TITLE
    if block.style.casefold() == "author" or is_author(block):
        return Role.AUTHOR
    if alone and after_title == index - 1 and is_name(block):
        return Role.AUTHOR
    text = plain(block.text)
    if (alone or after_title is not None) and is_dedication(block):
        return Role.DEDICATION
    if (
        count_words(text) <= 25
        and _ABOUT_MANUSCRIPT.search(text)
        and (alone or not is_sentence(text))
    ):
        return Role.NOTE
    return Role.NOTE if alone else None
