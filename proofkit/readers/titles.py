"""Which line is the book's title, and what a title or a name looks like."""

from __future__ import annotations

import re

from proofkit.book import count_words
from proofkit.readers.blocks import Block, plain

_LABEL = re.compile(r"(?:working )?title\s*:\s*", re.IGNORECASE)
_STYLED = re.compile(r"(?:book )?title|titel|titre", re.IGNORECASE)
_AUTHOR = re.compile(
    r"(?:(?:(?:a|an) )?(?:story|tale|text|words|picture book|written|retold|told|adapted|translated"
    r"|illustrat(?:ed|ions)|pictures|drawn)(?: (?:and|&) (?:illustrat(?:ed|ions)|pictures))? )?by:? (?P<name>.+)"
    r"|(?:author|text|words|story|illustrat(?:or|ions?)|pictures)\s*:\s*(?P<labelled>.+)",
    re.IGNORECASE | re.DOTALL,
)
_PARTICLE = r"and|&|de|van|von|der|den|la|le|di|da|of|the|illustrated|pictures|by"
_CAPITAL = r"[A-ZÀ-Þ][\w’'.-]*"
_NAME = re.compile(rf"(?:{_CAPITAL}|{_PARTICLE}),?(?:\s+(?:{_CAPITAL}|{_PARTICLE}),?)*")
_CONTACT = re.compile(r"@|\bwww\.|\d{4,}|\b(?:tel|phone|email|mobile)\b", re.IGNORECASE)
_LONGEST_TITLE = 14
_LONGEST_AUTHOR_LINE = 16


def title_of(blocks: list[Block], *, alone: bool, known: str) -> int | None:
    """Which of the first blocks is the title, or None.

    ``alone``: nothing but front matter stands there, so a short line is enough. ``known`` is the
    title that the file's properties give.
    """
    for index, block in enumerate(blocks):
        if _STYLED.fullmatch(block.style) or _LABEL.match(plain(block.text)):
            return index
    for index, block in enumerate(blocks):
        if block.level == 1:
            return index
    for index, block in enumerate(blocks[1:]):
        if is_author(block) and blocks[index].role is None and _short(blocks[index]):
            return index
    first = _first_after_address(blocks)
    if first is None or not _short(blocks[first]):
        return None
    same = bool(known) and plain(blocks[first].text).casefold() == known.casefold()
    return first if same or alone or looks_like_title(blocks, first) else None


def title_words(block: Block) -> str:
    """The title itself, without "Title:" before it or marks around it."""
    words = _LABEL.sub("", " ".join(plain(block.text).split()), count=1)
    return words[1:-1] if words[:1] + words[-1:] in {"“”", "‘’", '""'} else words


def is_author(block: Block) -> bool:
    """Whether a block is a line such as "by Jo Lane" or "Illustrations: Ann Fox"."""
    text = plain(block.text)
    found = _AUTHOR.fullmatch(text)
    if found is None or count_words(text) > _LONGEST_AUTHOR_LINE:
        return False
    return bool(_NAME.fullmatch((found["name"] or found["labelled"]).strip(" .")))


def is_name(block: Block) -> bool:
    """Whether a block is two to four words that may be somebody's name."""
    text = plain(block.text)
    return 2 <= count_words(text) <= 4 and bool(_NAME.fullmatch(text))


def is_sentence(text: str) -> bool:
    """Whether a text ends as a sentence or speech does."""
    return text.endswith((".", "!", "?", "…", "”", '"', "’", "'"))


def looks_like_title(blocks: list[Block], first: int) -> bool:
    """A first line whose long words have capitals, before longer text or a name."""
    text = plain(blocks[first].text)
    words = re.findall(r"[^\W\d_][\w’'-]*", text)
    words = [word for word in words if len(word) > 3 or word == word.upper()]
    if not words or text[0] in "“\"‘'" or is_sentence(text):
        return False
    after = [block for block in blocks[first + 1 : first + 2] if not is_name(block)]
    return all(word[0].isupper() for word in words) and all(
        count_words(plain(block.text)) > count_words(text) for block in after
    )


def _first_after_address(blocks: list[Block]) -> int | None:
    """The first block that may be a title: after the author's own name and address, if they are first."""
    contacts = [index for index, block in enumerate(blocks) if _CONTACT.search(block.text)]
    start = contacts[-1] + 1 if contacts and contacts[-1] < len(blocks) - 1 else 0
    return next((i for i, b in enumerate(blocks) if i >= start and b.role is None), None)


def _short(block: Block) -> bool:
    text = plain(block.text)
    return 0 < count_words(text) <= _LONGEST_TITLE and not text.endswith((".", ",", ";", ":"))
