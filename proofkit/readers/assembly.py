"""Leaves to a Book: lines joined, offsets counted, roles summed up, spreads numbered."""

from __future__ import annotations

import statistics
from collections.abc import Sequence
from pathlib import Path

from proofkit.book import Book, Page, Paragraph, Role
from proofkit.readers.blocks import Source
from proofkit.readers.lines import joined, page_width
from proofkit.readers.notes import has_text_labels, note_ranges
from proofkit.readers.pagination import MOST_WORDS_OF_A_VIEW, Leaf, Scheme, leaves_of
from proofkit.readers.roles import with_roles
from proofkit.readers.spreads import folios_of, numbered

# What a page may hold beside that which it is for.
_ASIDES = {Role.NOTE, Role.FOLIO, Role.RUNNING_HEAD}


def book_of(source: Source, path: Path) -> Book:
    """The book that a file's blocks make. ``path`` is kept as the author named the file."""
    leaves, scheme = leaves_of(source.blocks)
    labels = has_text_labels(source.blocks)
    title, leaves = with_roles(leaves, scheme, known=source.title, text_labels=labels)
    width = page_width(source.blocks)
    pages = [_page(leaf, number, width, labels) for number, leaf in enumerate(leaves, 1)]
    paginated = _paginated(pages, scheme)
    return Book(
        path=str(path),
        title=title or source.title,
        pages=tuple(numbered(pages, leaves) if paginated else pages),
        paginated=paginated,
        remarks=source.remarks,
    )


def _page(leaf: Leaf, number: int, width: int, text_labels: bool) -> Page:  # noqa: FBT001
    texts: list[str] = []
    paragraphs: list[Paragraph] = []
    notes: list[tuple[int, int]] = []
    emphasis: list[tuple[int, int]] = []
    for block in leaf.blocks:
        own = joined(block.text, width)
        if not own:
            continue
        start = paragraphs[-1].end + 2 if paragraphs else 0
        texts.append(own)
        emphasis += [(start + first, start + last) for first, last in block.italics.within(own)]
        role = block.role or Role.STORY
        if role is Role.STORY:
            ranges = note_ranges(own, text_labels=text_labels)
            notes += [(start + first, start + last) for first, last in ranges]
        paragraphs.append(
            Paragraph(
                start=start,
                end=start + len(own),
                role=role,
                style=block.style,
                locator=block.locator,
            )
        )
    return Page(
        number=number,
        text="\n\n".join(texts),
        paragraphs=tuple(paragraphs),
        label=leaf.label,
        folios=folios_of(leaf),
        role=_role(leaf, paragraphs),
        notes=tuple(notes),
        emphasis=tuple(emphasis),
    )


def _role(leaf: Leaf, paragraphs: Sequence[Paragraph]) -> Role:
    """Story where a page has any, or a title; else what most of it is; with notes alone it is wordless."""
    sizes: dict[Role, int] = {}
    for paragraph in paragraphs:
        if paragraph.role not in _ASIDES:
            sizes[paragraph.role] = sizes.get(paragraph.role, 0) + paragraph.end - paragraph.start
    for role in (Role.STORY, Role.TITLE):
        if role in sizes:
            return role
    if sizes:
        return max(sizes, key=lambda role: sizes[role])
    return (leaf.mark.role if leaf.mark else None) or (Role.NOTE if leaf.aside else Role.STORY)


def _paginated(pages: Sequence[Page], scheme: Scheme) -> bool:
    """Marks are believed; breaks mark pages only if they part a story into views, not chapters."""
    if scheme in {Scheme.MARKS, Scheme.NUMBERS}:
        return True
    words = [page.words for page in pages if page.role is Role.STORY and page.words]
    return (
        scheme is not Scheme.NOTHING
        and len(words) > 1
        and statistics.median(words) <= MOST_WORDS_OF_A_VIEW
    )
