"""Word files (.docx), read from their XML with lxml.

python-docx hides what this reader must see (tracked changes, text boxes, fields, where breaks lie), so
it walks the document itself, by local names, since Word's two dialects differ only in namespaces.

Tracked changes are read as accepted; comments, hidden text, field codes and a document's headers and
footers are left out; a field of the page number is a folio. Footnotes and endnotes are read after the
paragraph that refers to them, as back matter. A locator "paragraph 57" counts every ``w:p`` of
document.xml in its order; "footnote 2" and "endnote 2" give the note's id.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from proofkit.book import Role
from proofkit.problem import Unusable
from proofkit.readers.blocks import Block, Break, Source
from proofkit.readers.characters import kept
from proofkit.readers.elements import Element, ancestor, attribute, child, local
from proofkit.readers.italics import italics_of
from proofkit.readers.package import Package
from proofkit.readers.tables import table_blocks
from proofkit.readers.word_runs import BREAK, Run, runs_of
from proofkit.readers.word_styles import Style, Styles

_CHANGES = {"ins", "del", "moveTo", "moveFrom"}
_STARTS_NO_PAGE = {"continuous", "nextColumn"}
_WRAPPERS = {"sdt", "sdtContent", "customXml", "smartTag", "ins", "moveTo"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Passage:
    """One paragraph as it was read: its locator, as blocks have it, and its runs with their elements."""

    locator: str
    runs: tuple[Run, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class WordFile:
    """An open Word file: what was read, the main part's name and tree, and where the words stand there."""

    source: Source
    part: str
    root: Element
    passages: tuple[Passage, ...]


def read_word(package: Package) -> Source:
    """The blocks of a Word file. Raises ``Unusable`` when the package holds no readable document."""
    return open_word(package).source


def open_word(package: Package) -> WordFile:
    """The same with the elements that it was read from, for those who want to set marks beside them."""
    part = _main_part(package)
    root = package.xml(part)
    body = child(root, "body")
    if root is None or body is None:
        raise Unusable(
            f"“{package.name}” has no text inside; open it in Word and save it anew as .docx."
        )
    folder = part.rpartition("/")[0]
    document = _Document(
        styles=Styles(package.xml(f"{folder}/styles.xml")),
        numbers={p: n for n, p in enumerate((e for e in root.iter() if local(e) == "p"), 1)},
        notes=_notes(package, folder),
        sections=_section_starts(body),
    )
    blocks = tuple(document.blocks(body))
    return WordFile(
        source=Source(blocks=blocks, title=_title(package), remarks=_remarks(root)),
        part=part,
        root=root,
        passages=tuple(document.passages),
    )


def _main_part(package: Package) -> str:
    """The part that holds the document: Word says so in the package's relations."""
    relations = package.xml("_rels/.rels")
    for relation in relations if relations is not None else ():
        if str(relation.get("Type", "")).endswith("/officeDocument"):
            return str(relation.get("Target", "")).lstrip("/")
    return "word/document.xml"


def _title(package: Package) -> str:
    title = child(package.xml("docProps/core.xml"), "title")
    return " ".join(kept(title.text or "").split()) if title is not None else ""


def _remarks(root: Element) -> tuple[str, ...]:
    """How many tracked changes there are: neighbours of one author and moment count once."""
    count = 0
    before: tuple[object, ...] | None = None
    for element in root.iter():
        if local(element) not in _CHANGES or local(element) == "moveFrom":
            continue
        mark = (local(element), attribute(element, "author"), attribute(element, "date"))
        joined = before == mark and mark[2] != ""
        count += not joined
        before = mark
    if not count:
        return ()
    changes = "1 tracked change; it is" if count == 1 else f"{count} tracked changes; they are"
    return (f"The file has {changes} read as accepted.",)


def _section_starts(body: Element) -> list[bool]:
    """For each section in order, whether it starts a page."""
    sections = [
        element
        for element in body.iter()
        if local(element) == "sectPr" and local(element.getparent()) in {"body", "pPr"}
    ]
    return [attribute(child(e, "type"), "val") not in _STARTS_NO_PAGE for e in sections]


def _notes(package: Package, folder: str) -> dict[str, Element]:
    """Footnotes and endnotes by kind and id; the separators between text and notes are none."""
    found: dict[str, Element] = {}
    for kind in ("footnote", "endnote"):
        root = package.xml(f"{folder}/{kind}s.xml")
        for note in root if root is not None else ():
            if local(note) == kind and attribute(note, "type") in {"", "normal"}:
                found[f"{kind} {attribute(note, 'id')}"] = note
    return found


@dataclass(slots=True, kw_only=True)
class _Document:
    """One walk through a document. ``section`` counts the sections that have ended.

    ``note`` is the footnote or endnote that is being read; ``passages`` is what was read so far.
    """

    styles: Styles
    numbers: dict[Element, int]
    notes: dict[str, Element]
    sections: list[bool]
    section: int = 0
    broke: bool = False
    pending: list[Run] = field(default_factory=list)
    note: str = ""
    passages: list[Passage] = field(default_factory=list)

    def blocks(self, parent: Element) -> Iterator[Block]:
        """The blocks of a body, a cell, a text box or a note."""
        for element in parent:
            name = local(element)
            if name == "p":
                yield from self._paragraph(element)
            elif name == "tbl":
                yield from table_blocks([list(row) for row in self._rows(element)])
            elif name in _WRAPPERS:
                yield from self.blocks(element)

    def _rows(self, table: Element) -> Iterator[list[list[Block]]]:
        for row in table.iter():
            if local(row) != "tr" or ancestor(row, "tbl") is not table or _is_deleted_row(row):
                continue
            cells = [e for e in row.iter() if local(e) == "tc" and ancestor(e, "tr") is row]
            yield [list(self.blocks(cell)) for cell in cells]

    def _paragraph(self, paragraph: Element) -> Iterator[Block]:
        properties = child(paragraph, "pPr")
        runs = self.pending + list(runs_of(paragraph))
        if _runs_on(paragraph, properties):
            self.pending = runs
            return
        self.pending = []
        style = self.styles.of(properties)
        shape = Block(
            text="",
            style=style.name,
            level=style.level,
            locator=self._locator(paragraph),
            before=Break.PAGE if self.broke or style.breaks_before else Break.NONE,
        )
        self.broke = False
        self.passages.append(Passage(locator=shape.locator or self.note, runs=tuple(runs)))
        yield from _pieces([self._styled(run, style) for run in runs], shape)
        for run in runs:
            if run.box is not None:
                yield from self.blocks(run.box)
            if run.note:
                yield from self._note(run.note)
        self._end_section(properties)

    def _styled(self, run: Run, around: Style) -> Run:
        """The run with its italics settled: its own, or the two styles', of which each undoes the other.

        ECMA-376, part 1, 17.7.3: italics are a property that styles toggle.
        """
        if run.italic is not None or not run.text:
            return run
        return replace(run, italic=self.styles.italic(run.style) != around.italic)

    def _locator(self, paragraph: Element) -> str:
        number = self.numbers.get(paragraph)
        return f"paragraph {number}" if number else ""

    def _note(self, key: str) -> Iterator[Block]:
        note = self.notes.get(key)
        if note is not None:
            self.note = key
            for block in self.blocks(note):
                yield replace(block, role=Role.BACK_MATTER, locator=key, before=Break.NONE)
            self.note = ""

    def _end_section(self, properties: Element | None) -> None:
        if child(properties, "sectPr") is not None:
            self.section += 1
            following = self.sections[self.section : self.section + 1]
            self.broke = following[0] if following else True


def _pieces(runs: list[Run], shape: Block) -> Iterator[Block]:
    """A paragraph's blocks: one, or one more for each page break inside it."""
    held: list[Run] = []
    pieces = []
    for run in runs:
        if run.text == BREAK:
            pieces.append(held)
            held = []
        else:
            held.append(run)
    pieces.append(held)
    for index, piece in enumerate(pieces):
        before = shape.before if index == 0 else Break.PAGE
        block = _filled(piece, replace(shape, before=before))
        if block.text.strip() or before is Break.PAGE:
            yield block


def _filled(runs: list[Run], shape: Block) -> Block:
    worded = [run for run in runs if run.text.strip()]
    return replace(
        shape,
        text=kept("".join(run.text for run in runs)),
        bold=bool(worded) and all(run.bold for run in worded),
        italics=italics_of((run.text, bool(run.italic)) for run in runs),
        role=Role.FOLIO if worded and all(run.folio for run in worded) else None,
    )


def _runs_on(paragraph: Element, properties: Element | None) -> bool:
    """Whether the paragraph's end was deleted, so that the next paragraph continues it."""
    mark = child(properties, "rPr")
    deleted = child(mark, "del") is not None or child(mark, "moveFrom") is not None
    following = paragraph.getnext()
    return deleted and following is not None and local(following) == "p"


def _is_deleted_row(row: Element) -> bool:
    return child(child(row, "trPr"), "del") is not None
