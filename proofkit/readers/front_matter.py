"""What stands before the story: title, author line, dedication, and words about the manuscript."""

from __future__ import annotations

import re
from dataclasses import replace

from proofkit.book import Role, count_words
from proofkit.readers.blocks import SOFT, Block, plain
from proofkit.readers.events import at_line
from proofkit.readers.pagination import Leaf

_TITLE_LABEL = re.compile(r"(?:working )?title\s*:\s*", re.IGNORECASE)
_STYLED_TITLE = re.compile(r"^(?:book )?title$|^titel$|^titre$", re.IGNORECASE)
_STYLED_SUBTITLE = re.compile(r"^subtitle$", re.IGNORECASE)
_AUTHOR = re.compile(
    r"(?:(?:(?:a|an) )?(?:story|tale|text|words|picture book|written|retold|told|adapted|translated"
    r"|illustrat(?:ed|ions)|pictures|drawn)(?: (?:and|&) (?:illustrat(?:ed|ions)|pictures))? )?by:? (?P<name>.+)"
    r"|(?:author|text|words|story|illustrat(?:or|ions?)|pictures)\s*:\s*(?P<labelled>.+)",
    re.IGNORECASE | re.DOTALL,
)
_NAME = re.compile(
    r"(?:[A-ZÀ-Þ][\w’'.-]*|and|&|de|van|von|der|den|la|le|di|da|of|the|illustrated|by|pictures|,)"
    r"(?:,?\s+(?:[A-ZÀ-Þ][\w’'.-]*|and|&|de|van|von|der|den|la|le|di|da|illustrated|pictures|by))*"
)
_DEDICATION = re.compile(
    r"(?:for|to) (?:[A-ZÀ-Þ]|my |our |all |every|the (?:children|child|real|memory|one)|those |anyone "
    r"|you\b)|in (?:loving )?memory of |dedicated to |(?:with )?(?:love|thanks) (?:and \w+ )?to ",
)
# A dedication has no statement of its own: what a verb of the past does in it hangs on "who".
_STATEMENT = re.compile(
    r"\b(?:was|were|had|did|said|went|came|saw|looked|lived|wanted|could|would|is|are|it|he|she|they)\b"
)
_ABOUT_MANUSCRIPT = re.compile(
    r"\bwords?\b.*\d|\d.*\bwords\b|\bword count\b|\bages?\b.*\d|\bpicture book\b|\bmanuscript\b|\bdraft\b"
    r"|\bsynopsis\b|\bpitch\b|@|\bhttps?:|\bwww\.|\b(?:tel|phone|email|e-mail|address)\b|\bgenre\b"
    r"|\bsubmi(?:tted|ssion)\b|\bagent\b|\bversion \d",
    re.IGNORECASE,
)
_LONGEST_TITLE = 14
_LONGEST_DEDICATION = 30


def title_of(blocks: list[Block], *, alone: bool, known: str) -> int | None:
    """Which of the first blocks is the title, or None.

    ``alone``: nothing but front matter stands there, so a short first line is enough. ``known`` is
    the title that the file's properties give.
    """
    for index, block in enumerate(blocks):
        if _STYLED_TITLE.match(block.style) or _TITLE_LABEL.match(plain(block.text)):
            return index
    for index, block in enumerate(blocks):
        if block.level == 1:
            return index
    first = next((i for i, b in enumerate(blocks) if b.role is None), None)
    if first is None or not _short(blocks[first]):
        return None
    text = plain(blocks[first].text)
    followed = first + 1 < len(blocks) and is_author(blocks[first + 1])
    by_itself = alone and not is_dedication(blocks[first]) and not _ABOUT_MANUSCRIPT.search(text)
    same = bool(known) and text.casefold() == known.casefold()
    return first if followed or by_itself or same or _looks_like_title(blocks, first) else None


def title_words(block: Block) -> str:
    """The title itself, without "Title:" before it."""
    return _TITLE_LABEL.sub("", " ".join(plain(block.text).split()), count=1)


def is_author(block: Block) -> bool:
    """Whether a block is a line such as "by Jo Lane" or "Illustrations: Ann Fox"."""
    text = plain(block.text)
    found = _AUTHOR.fullmatch(text)
    if found is None or count_words(text) > 16:
        return False
    return bool(_NAME.fullmatch((found["name"] or found["labelled"]).strip(" .")))


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


def is_front(leaf: Leaf, known: str) -> bool:
    """Whether a leaf by itself is a title page: a title or an author line, and no sentence."""
    open_blocks = [b for b in _with_title_apart(leaf.blocks) if b.role is None]
    if not open_blocks or len(open_blocks) > 12:
        return False
    if any(
        count_words(block.text) >= 8 and not _no_sentence(plain(block.text))
        for block in open_blocks
    ):
        return False
    if any(map(is_author, open_blocks)):
        return True
    at = title_of(open_blocks, alone=False, known=known)
    return at is not None and all(
        _no_sentence(plain(b.text)) for i, b in enumerate(open_blocks) if i != at
    )


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
    if _STYLED_SUBTITLE.match(block.style):
        return Role.TITLE
    if block.style.casefold() == "author" or is_author(block):
        return Role.AUTHOR
    if alone and after_title == index - 1 and _is_name(block):
        return Role.AUTHOR
    text = plain(block.text)
    if (alone or after_title is not None) and is_dedication(block):
        return Role.DEDICATION
    if count_words(text) <= 25 and _ABOUT_MANUSCRIPT.search(text) and (alone or _no_sentence(text)):
        return Role.NOTE
    return Role.NOTE if alone else None


def _is_name(block: Block) -> bool:
    text = plain(block.text)
    return 2 <= count_words(text) <= 4 and bool(_NAME.fullmatch(text))


def _no_sentence(text: str) -> bool:
    return not text.endswith((".", "!", "?", "”", '"', "’", "'"))


def _short(block: Block) -> bool:
    text = plain(block.text)
    return 0 < count_words(text) <= _LONGEST_TITLE and not text.endswith((".", ",", ";", ":"))


def _looks_like_title(blocks: list[Block], first: int) -> bool:
    """A first line in capitals or with capital words, before longer text."""
    text = plain(blocks[first].text)
    words = [
        word
        for word in re.findall(r"[^\W\d_][\w’'-]*", text)
        if len(word) > 3 or word == word.upper()
    ]
    if not words or text[:1] in "“\"‘'" or text[-1] in '”"':
        return False
    capital = all(word[0].isupper() for word in words)
    after = [block for block in blocks[first + 1 : first + 2] if not _is_name(block)]
    return (
        capital
        and _no_sentence(text)
        and all(count_words(plain(block.text)) > count_words(text) for block in after)
    )
