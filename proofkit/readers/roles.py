"""Who speaks in each block: the story, or something beside it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from proofkit.book import Role, count_words
from proofkit.readers.back_matter import (
    mark_folios,
    mark_imprint,
    mark_running_heads,
    with_back_matter,
)
from proofkit.readers.blocks import Block, plain
from proofkit.readers.front_matter import is_dedication, is_front, mark_front
from proofkit.readers.marks import Kind
from proofkit.readers.notes import with_notes
from proofkit.readers.pagination import Leaf, Scheme
from proofkit.readers.titles import is_author

_LONGEST_HEADING = 12


def with_roles(
    leaves: list[Leaf], scheme: Scheme, *, known: str, text_labels: bool
) -> tuple[str, list[Leaf]]:
    """The book's title as its text gives it, and the leaves with every block's role; None is story.

    ``known`` is the title in the file's properties.
    """
    for leaf in leaves:
        _mark_contents(leaf)
        mark_imprint(leaf)
        leaf.blocks = with_notes(leaf.blocks, text_labels=text_labels)
        _mark_named(leaf)
    mark_folios(leaves)
    mark_running_heads(leaves, known)
    title = _mark_front(leaves, scheme, known)
    mark_running_heads(leaves, title)
    _mark_headings(leaves)
    return title, with_back_matter(leaves, split=scheme is not Scheme.NOTHING)


def _mark_contents(leaf: Leaf) -> None:
    for index, block in enumerate(leaf.blocks):
        if block.role is None and block.style.casefold().startswith(("toc", "contents")):
            leaf.blocks[index] = replace(block, role=Role.BACK_MATTER)


def _mark_named(leaf: Leaf) -> None:
    """A page whose mark says what it is: "Page 1: title page", "Endpapers"."""
    role = leaf.mark.role if leaf.mark else None
    if role is None:
        return
    for index, block in enumerate(leaf.blocks):
        if block.role is None:
            author = role is Role.TITLE and is_author(block)
            leaf.blocks[index] = replace(block, role=Role.AUTHOR if author else role)


def _mark_front(leaves: list[Leaf], scheme: Scheme, known: str) -> str:
    """Mark what stands before the story; the title found there, or ""."""
    if scheme is Scheme.NOTHING:
        return mark_front(leaves[0], alone=False, known=known) if leaves else ""
    title = _named_title(leaves)
    marked = next((i for i, leaf in enumerate(leaves) if leaf.mark), None)
    for index, leaf in enumerate(leaves):
        before_marks = marked is not None and index < marked
        if before_marks and not _story_before(leaf, leaves):
            leaf.aside = True
            title = mark_front(leaf, alone=True, known=title or known) or title
        elif is_front(leaf, title or known, first=index == 0 and leaf.mark is None):
            title = mark_front(leaf, alone=True, known=title or known) or title
        elif _is_dedication_leaf(leaf) and index:
            leaf.blocks = [replace(b, role=b.role or Role.DEDICATION) for b in leaf.blocks]
        elif any(block.role is None for block in leaf.blocks) or not leaf.blocks:
            if index == 0:
                title = mark_front(leaf, alone=False, known=known) or title
            break
    return title


def _named_title(leaves: Sequence[Leaf]) -> str:
    titles = [b for leaf in leaves for b in leaf.blocks if b.role is Role.TITLE]
    return " ".join(plain(titles[0].text).split()) if titles else ""


def _story_before(leaf: Leaf, leaves: Sequence[Leaf]) -> bool:
    """Whether the story may begin before the first mark: it counts from 2 or more, and prose stands here."""
    first = next(other.mark for other in leaves if other.mark)
    if first.kind is Kind.BARE or not first.numbers or first.numbers[0] == 1:
        return False
    return any(_is_prose(block) for block in leaf.blocks)


def _is_prose(block: Block) -> bool:
    text = plain(block.text)
    return (
        block.role is None and count_words(text) >= 8 and text.endswith((".", "!", "?", "”", '"'))
    )


def _is_dedication_leaf(leaf: Leaf) -> bool:
    texts = [block for block in leaf.blocks if block.role is None]
    return (
        0 < len(texts) <= 3
        and is_dedication(texts[0])
        and all(count_words(block.text) <= 12 for block in texts[1:])
    )


def _mark_headings(leaves: Sequence[Leaf]) -> None:
    """Headings inside the story are titles, unless the author styled the story itself as headings."""
    blocks = [block for leaf in leaves for block in leaf.blocks if block.role is None]
    if sum(block.level > 0 for block in blocks) * 2 > len(blocks):
        return
    for leaf in leaves:
        for index, block in enumerate(leaf.blocks):
            text = plain(block.text)
            short = count_words(text) <= _LONGEST_HEADING and not text.endswith((".", ",", ";"))
            if block.role is None and block.level and short:
                leaf.blocks[index] = replace(block, role=Role.TITLE)
