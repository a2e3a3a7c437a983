"""OpenDocument texts (.odt), read from content.xml with lxml.

Deleted text of tracked changes lies outside the text and stays there; inserted text is in place.
Comments and page furniture are left out; a page number field is a folio; footnotes are read after the
paragraph that refers to them, as back matter. A locator "paragraph 57" counts every ``text:p`` and
``text:h`` inside ``office:text`` in its order.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from proofkit.book import Role
from proofkit.problem import Unusable
from proofkit.readers.blocks import Block, Break, Source
from proofkit.readers.characters import kept
from proofkit.readers.elements import Element, ancestor, attribute, child, local
from proofkit.readers.italics import italics_of
from proofkit.readers.opendocument_styles import Style, Styles
from proofkit.readers.package import Package
from proofkit.readers.tables import table_blocks

_SKIPPED = {
    "tracked-changes",
    "annotation",
    "annotation-end",
    "ruby-text",
    "sequence-decls",
    "forms",
}
_FOLIOS = {"page-number", "page-count"}
_HARD_SPACES = 200


def read_opendocument(package: Package) -> Source:
    """The blocks of an OpenDocument text. Raises ``Unusable`` when it is locked or holds no text."""
    if b"encryption-data" in (package.bytes_of("META-INF/manifest.xml") or b""):
        raise Unusable(
            f"“{package.name}” is protected by a password; save it without one and try again."
        )
    root = package.xml("content.xml")
    text = child(child(root, "body"), "text")
    if root is None or text is None:
        raise Unusable(
            f"“{package.name}” has no text inside; open it in your word processor and save it anew."
        )
    paragraphs = (e for e in text.iter() if local(e) in {"p", "h"})
    document = _Document(
        styles=Styles(root, package.xml("styles.xml")),
        numbers={element: number for number, element in enumerate(paragraphs, 1)},
    )
    return Source(
        blocks=tuple(document.blocks(text)), title=_title(package), remarks=_remarks(text)
    )


def _title(package: Package) -> str:
    found = child(child(package.xml("meta.xml"), "meta"), "title")
    return " ".join(kept(found.text or "").split()) if found is not None else ""


def _remarks(text: Element) -> tuple[str, ...]:
    count = sum(local(e) == "changed-region" for e in text.iter())
    if not count:
        return ()
    changes = "1 tracked change; it is" if count == 1 else f"{count} tracked changes; they are"
    return (f"The file has {changes} read as accepted.",)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Piece:
    """Some characters of a paragraph, or a text box or footnote that hangs in it."""

    text: str = ""
    bold: bool = False
    italic: bool = False
    folio: bool = False
    box: Element | None = None
    note: Element | None = None


@dataclass(slots=True, kw_only=True)
class _Document:
    """One walk through a text. ``broke``: the paragraph before ends its page."""

    styles: Styles
    numbers: dict[Element, int]
    broke: bool = False

    def blocks(self, parent: Element) -> Iterator[Block]:
        """The blocks of the text, a cell, a box or a note."""
        for element in parent:
            name = local(element)
            if name in _SKIPPED:
                continue
            if name in {"p", "h"}:
                yield from self._paragraph(element, heading=name == "h")
            elif name == "table":
                yield from self._table(element)
            else:
                yield from self.blocks(element)

    def _table(self, table: Element) -> Iterator[Block]:
        if self.styles.of(attribute(table, "style-name")).breaks_before:
            yield Block(text="", before=Break.PAGE)
        rows = [
            row
            for row in table.iter()
            if local(row) == "table-row" and ancestor(row, "table") is table
        ]
        yield from table_blocks(
            [
                [list(self.blocks(cell)) for cell in row if local(cell) == "table-cell"]
                for row in rows
            ]
        )

    def _paragraph(self, paragraph: Element, *, heading: bool) -> Iterator[Block]:
        style = self.styles.of(attribute(paragraph, "style-name"))
        level = attribute(paragraph, "outline-level")
        pieces = list(self._pieces(paragraph, style))
        worded = [piece for piece in pieces if piece.text.strip()]
        block = Block(
            text=kept("".join(piece.text for piece in pieces)),
            locator=f"paragraph {self.numbers[paragraph]}" if paragraph in self.numbers else "",
            style=style.name,
            level=(int(level) if level.isdigit() else 1) if heading else 0,
            bold=bool(worded) and all(piece.bold for piece in worded),
            italics=italics_of((piece.text, piece.italic) for piece in pieces),
            role=Role.FOLIO if worded and all(piece.folio for piece in worded) else None,
            before=Break.PAGE if self.broke or style.breaks_before else Break.NONE,
        )
        self.broke = style.breaks_after
        if block.text.strip() or block.before is Break.PAGE:
            yield block
        for piece in pieces:
            if piece.box is not None:
                yield from self.blocks(piece.box)
            if piece.note is not None:
                for note in self.blocks(piece.note):
                    yield replace(note, role=Role.BACK_MATTER, before=Break.NONE)

    def _pieces(self, parent: Element, style: Style) -> Iterator[_Piece]:
        if parent.text:
            yield _piece_of(_collapsed(parent.text), style)
        for element in parent:
            yield from self._piece(element, style)
            if element.tail:
                yield _piece_of(_collapsed(element.tail), style)

    def _piece(self, element: Element, style: Style) -> Iterator[_Piece]:
        name = local(element)
        if name in _SKIPPED:
            return
        if name == "s":
            count = attribute(element, "c")
            yield _piece_of(" " * min(int(count) if count.isdigit() else 1, _HARD_SPACES), style)
        elif name in {"tab", "line-break"}:
            yield _piece_of("\t" if name == "tab" else "\n", style)
        elif name in _FOLIOS:
            yield _Piece(text=element.text or "", folio=True)
        elif name == "note":
            yield _Piece(note=child(element, "note-body"))
        elif name == "text-box":
            yield _Piece(box=element)
        elif name == "span":
            own = self.styles.of(attribute(element, "style-name"))
            italic = style.italic if own.italic is None else own.italic
            both = replace(style, bold=style.bold or own.bold, italic=italic)
            yield from self._pieces(element, both)
        else:
            yield from self._pieces(element, style)


def _piece_of(text: str, style: Style) -> _Piece:
    return _Piece(text=text, bold=style.bold, italic=bool(style.italic))


def _collapsed(text: str) -> str:
    """OpenDocument counts a run of white space in its XML as one space; more are ``text:s``."""
    spaced = text.replace("\n", " ").replace("\r", " ").replace("\t", " ")
    while "  " in spaced:
        spaced = spaced.replace("  ", " ")
    return spaced
