"""What is no story and stands anywhere or after it: imprint, back matter, folios, running heads."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import replace

from proofkit.book import Role, count_words
from proofkit.readers.blocks import SOFT, Block, Break, plain
from proofkit.readers.marks import Mark, mark_in, number_mark
from proofkit.readers.pagination import Leaf

# What only an imprint says, and what it says in words that a story may use as well.
_IMPRINT = re.compile(
    r"©|\(c\)\s*\d{4}|\bcopyright (?:\d{4}|page|holder|©)|\ball rights reserved\b|\bISBN\b.*\d"
    r"|\blicen[cs]e\s*:|\bbritish library\b|\blibrary of congress\b|\bmoral rights?\b"
    r"|\bno part of this (?:book|publication)\b|\bcreative commons\b",
    re.IGNORECASE | re.DOTALL,
)
_PERHAPS_IMPRINT = re.compile(
    r"\bfirst published\b|\bpublished (?:by|in)\b|\bprinted (?:and bound )?(?:in|by)\b|\bcopyright\b",
    re.IGNORECASE,
)
_CREDIT = re.compile(
    r"(?:text|words|story|author|illustrat\w+|pictures|design(?:er)?|edit(?:or|ed)\b.*|translat\w+(?: by)?"
    r"|adapt\w+(?: by)?|language|publisher|layout|typeset)\s*:.*",
    re.IGNORECASE,
)
_BACK_HEADING = re.compile(
    r"(?:about|meet) the (?:author|illustrator|author and (?:the )?illustrator|artist)s?"
    r"|(?:author|illustrator)[’']?s?[’']? (?:note|bio|biography)s?|acknowledge?ments?|glossary"
    r"|(?:discussion )?questions(?: to (?:talk|think) about)|discussion (?:guide|questions)"
    r"|(?:a )?notes? (?:for|from|to) (?:the )?(?:parents?|teachers?|grown[- ]?ups?|carers?|adults?|author"
    r"|readers?)|bibliography|further reading|back matter|imprint|colophon",
    re.IGNORECASE,
)
# A story may have such a line too, so it must look like a heading.
_PERHAPS_BACK_HEADING = re.compile(
    r"about the (?:book|story)|biograph(?:y|ies)|(?:with )?thanks|questions|activit(?:y|ies)"
    r"|did you know\??|fun facts|sources|also by .*|other books by .*|copyright",
    re.IGNORECASE,
)
_PAGE_NUMBER = re.compile(r"(?:\bpage\s*)?\d{1,3}\s*$|^\s*\d{1,3}(?=\s*[|/·•–—-])", re.IGNORECASE)
_SENTENCE_END = re.compile(r"[.!?…,;:”\"’']\s*$")
_LONGEST_NAME = 3
_MOST_IMPRINT_WORDS = 60
_LONGEST_HEADING = 12


def mark_imprint(leaf: Leaf) -> None:
    """Give an imprint its role: the whole leaf where most of its lines are of that kind, else lines."""
    open_blocks = [block for block in leaf.blocks if block.role is None]
    sure = sum(bool(_IMPRINT.search(block.text)) for block in open_blocks)
    perhaps = sum(
        bool(_PERHAPS_IMPRINT.search(block.text) or _CREDIT.fullmatch(plain(block.text)))
        for block in open_blocks
        if not _IMPRINT.search(block.text)
    )
    if not sure:
        return
    whole = (sure + perhaps) * 2 >= len(open_blocks)
    for index, block in enumerate(leaf.blocks):
        line = bool(_IMPRINT.search(block.text)) and count_words(block.text) <= _MOST_IMPRINT_WORDS
        if block.role is None and (whole or line):
            leaf.blocks[index] = replace(block, role=Role.IMPRINT)


def is_back_heading(block: Block) -> bool:
    """Whether a block heads back matter: "About the author"; weaker words only where set as a heading."""
    first_line = re.split(rf"[{SOFT}\n]", block.text, maxsplit=1)[0]
    text = first_line.strip(" \t*_[]:.")
    if block.role is not None:
        return False
    set_apart = block.level > 0 or block.bold
    return bool(
        _BACK_HEADING.fullmatch(text) or (set_apart and _PERHAPS_BACK_HEADING.fullmatch(text))
    )


def with_back_matter(leaves: list[Leaf], *, split: bool) -> list[Leaf]:
    """The leaves with back matter marked, from its heading to the end or to the next mark.

    ``split``: back matter becomes a leaf of its own, as it does where pages are known.
    """
    total = sum(len(leaf.blocks) for leaf in leaves)
    seen, found, inside = 0, [], False
    for leaf in leaves:
        inside = inside and leaf.mark is None
        at = 0 if inside else _heading_at(leaf, after=total // 2 - seen)
        seen += len(leaf.blocks)
        if at is None:
            found.append(leaf)
            continue
        inside = True
        _mark_back(leaf, at)
        if split and at > 0:
            found.append(Leaf(mark=leaf.mark, part=leaf.part, blocks=leaf.blocks[:at]))
            found.append(Leaf(blocks=leaf.blocks[at:]))
        else:
            found.append(leaf)
    return found


def _heading_at(leaf: Leaf, *, after: int) -> int | None:
    """Where back matter begins on a leaf; only in the second half of the book's blocks.

    An imprint or a heading after a page break begins it too.
    """
    for index, block in enumerate(leaf.blocks):
        if index < after:
            continue
        if is_back_heading(block):
            return index
        if index and block.before is Break.PAGE and block.role is Role.IMPRINT:
            return index
    return None


def _mark_back(leaf: Leaf, at: int) -> None:
    for index in range(at, len(leaf.blocks)):
        block = leaf.blocks[index]
        if block.role is None:
            leaf.blocks[index] = replace(block, role=Role.BACK_MATTER)


def mark_folios(leaves: list[Leaf]) -> None:
    """Lone numbers at the head or foot of leaves are folios where they count up."""
    places = []
    for leaf in leaves:
        for index in {0, len(leaf.blocks) - 1} if leaf.blocks else ():
            text = plain(leaf.blocks[index].text)
            mark = number_mark(text) or _whole_mark(text)
            if mark and leaf.blocks[index].role is None:
                places.append((leaf, index, mark.numbers[0]))
    numbers = [number for _, _, number in places]
    if len(numbers) < 2 or numbers != sorted(set(numbers)):
        return
    for leaf, index, _ in places:
        leaf.blocks[index] = replace(leaf.blocks[index], role=Role.FOLIO)


def _whole_mark(text: str) -> Mark | None:
    mark = mark_in(text)
    return mark if mark and not mark.rest else None


def mark_running_heads(leaves: list[Leaf], title: str) -> None:
    """First or last lines that come back on most leaves as a running head does.

    That is the title and at most a name, or words with a page number at one end that counts up. A
    refrain comes back too, but it ends as a sentence does, or has no such number.
    """
    heads = Counter(_head_key(block) for leaf in leaves for block in _edges(leaf))
    wanted = {
        key
        for key, count in heads.items()
        if key and count >= 3 and count * 2 >= len(leaves) and _is_head(key, leaves, title)
    }
    for leaf in leaves:
        for block in _edges(leaf):
            if _head_key(block) in wanted and len(leaf.blocks) > 1:
                leaf.blocks[leaf.blocks.index(block)] = replace(block, role=Role.RUNNING_HEAD)


def _edges(leaf: Leaf) -> list[Block]:
    edges = leaf.blocks[:1] + leaf.blocks[1:][-1:]
    return [
        block
        for block in edges
        if block.role is None
        and count_words(block.text) <= _LONGEST_HEADING
        and not _SENTENCE_END.search(block.text)
    ]


def _head_key(block: Block) -> str:
    """A line without the page number at its end or, before a stroke or a dash, at its start."""
    return _PAGE_NUMBER.sub("", plain(block.text)).casefold().strip(" –—|/·•-")


def _is_head(key: str, leaves: list[Leaf], title: str) -> bool:
    lines = [block for leaf in leaves for block in _edges(leaf) if _head_key(block) == key]
    if title and all(_is_title_and_name(plain(line.text), title) for line in lines):
        return True
    numbers = [int(number) for line in lines for number in re.findall(r"\d+", line.text)[-1:]]
    return len(numbers) >= 3 and numbers == sorted(set(numbers))


def _is_title_and_name(line: str, title: str) -> bool:
    """Whether a line is the title and at most a few words with capitals: "Vale / The Goose"."""
    rest, found = re.subn(re.escape(title), " ", line, count=1, flags=re.IGNORECASE)
    words = re.findall(r"[^\W\d_]+", rest)
    return bool(found) and len(words) <= _LONGEST_NAME and all(word[0].isupper() for word in words)
