r"""Rich Text files (.rtf): a small reader of its own, which keeps what a plain converter loses.

Page and section breaks, styles, table cells, text boxes and footnotes are kept; deleted and hidden
text, comments, headers, footers and pictures are left out. A locator "paragraph 12" counts the
``\par``, ``\cell``, ``\sect`` and the like that end paragraphs, in the file's order.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, field, replace

from proofkit.book import Role
from proofkit.readers.blocks import Block, Break, Source
from proofkit.readers.characters import kept
from proofkit.readers.rich_text_state import Group, Paragraph, Table
from proofkit.readers.rich_text_words import (
    CHARACTERS,
    CHARSETS,
    SINKS,
    STARRED_BUT_READ,
    Sink,
    Token,
    decoded,
    paired,
    tokens_of,
)
from proofkit.readers.tables import table_blocks

_PARAGRAPH_ENDS = {"par", "nestcell", "nestrow"}
_SECTION_STAYS = {"sbknone", "sbkcol"}
_PAGE_FIELD = re.compile(r"\s*(?:PAGE|NUMPAGES|SECTIONPAGES)\b", re.IGNORECASE)
_ENCODINGS = {"mac": "mac_roman", "pc": "cp437", "pca": "cp850"}


def read_rich_text(data: bytes, name: str) -> Source:  # noqa: ARG001 - every reader takes both
    """The blocks of a Rich Text file. ``name`` is the file's name, for sentences."""
    reader = _Reader()
    for token in tokens_of(data):
        reader.take(token)
    reader.finish()
    return Source(blocks=tuple(reader.blocks), title=reader.title, remarks=reader.remarks)


@dataclass(slots=True)
class _Aside:
    """A text box or footnote that is being read: the depth it began at and the paragraph around it."""

    depth: int
    around: Paragraph
    role: Role | None


@dataclass(slots=True)
class _Reader:
    """One reading of a file, token by token."""

    blocks: list[Block] = field(default_factory=list)
    group: Group = field(default_factory=Group)
    stack: list[Group] = field(default_factory=list)
    paragraph: Paragraph = field(default_factory=Paragraph)
    open_asides: list[_Aside] = field(default_factory=list)
    aside: list[Block] = field(default_factory=list)
    table: Table = field(default_factory=Table)
    encoding: str = "cp1252"
    encodings: dict[int, str] = field(default_factory=dict)
    styles: dict[int, str] = field(default_factory=dict)
    title: str = ""
    code: str = ""
    count: int = 1
    skip: int = 0
    changes: int = 0
    change: str = ""
    after_section: bool = False

    def take(self, token: Token) -> None:
        """Take in the next token."""
        if token.kind == "{":
            self.skip = 0
            self.stack.append(self.group)
            self.group = replace(self.group, starred=False)
        elif token.kind == "}":
            self._close()
        elif token.kind == "word":
            self._word(token.text, token.number)
        else:
            self._characters(token)

    def finish(self) -> None:
        """End what the file left open."""
        while self.open_asides:
            self._leave_aside()
        self._end_paragraph()
        self._end_table()
        self.title = " ".join(kept(self.title).split())

    @property
    def remarks(self) -> tuple[str, ...]:
        """What the author should know of the file."""
        found = []
        if self.changes:
            changes = "1 tracked change; it is"
            if self.changes > 1:
                changes = f"{self.changes} tracked changes; they are"
            found.append(f"The file has {changes} read as accepted.")
        if self.stack:
            found.append(
                "The file breaks off before its end; see whether your last lines are there."
            )
        return tuple(found)

    def _close(self) -> None:
        self.skip = 0
        if self.stack:
            if self.open_asides and self.open_asides[-1].depth == len(self.stack):
                self._leave_aside()
            self.group = self.stack.pop()

    def _word(self, word: str, number: int | None) -> None:
        starred, self.group.starred = self.group.starred, word == "*"
        if starred and word not in STARRED_BUT_READ:
            self.group.sink = Sink.NOWHERE
        elif word in SINKS:
            self._turn(SINKS[word])
        elif self.group.sink in {Sink.FONTS, Sink.STYLES}:
            self._table_word(word, number)
        elif self.group.sink is Sink.TEXT:
            self._text_word(word, number)

    def _turn(self, sink: Sink) -> None:
        """Send this group's characters elsewhere; what is skipped stays skipped."""
        if sink is Sink.TITLE and self.group.sink is not Sink.INFO:
            return
        if sink in {Sink.BOX, Sink.FOOTNOTE} and self.group.sink in {Sink.TEXT, Sink.SHAPE}:
            role = Role.BACK_MATTER if sink is Sink.FOOTNOTE else None
            self.open_asides.append(_Aside(depth=len(self.stack), around=self.paragraph, role=role))
            self.paragraph = Paragraph()
            self.group.sink = Sink.TEXT
        elif self.group.sink is not Sink.NOWHERE:
            self.group.sink = sink
        if sink is Sink.FIELD_CODE:
            self.code = ""

    def _table_word(self, word: str, number: int | None) -> None:
        """A word in the table of fonts or of styles."""
        if word == "f":
            self.group.font = number or 0
        elif word == "fcharset" and number in CHARSETS:
            self.encodings[self.group.font] = CHARSETS[number]
        elif word == "s":
            self.group.style = number or 0

    def _text_word(self, word: str, number: int | None) -> None:
        if word == "u":
            self._put(chr((number or 0) % 0x10000))
            self.skip = self.group.fallback
        elif word in CHARACTERS:
            self._put(CHARACTERS[word])
        elif action := self._actions().get(word):
            action()
        elif word == "f":
            self.group.encoding = self.encodings.get(number or 0, "")
        elif word == "ansicpg":
            self.encoding = f"cp{number}" if number else self.encoding
        elif word in _ENCODINGS:
            self.encoding = _ENCODINGS[word]
        elif word in _SECTION_STAYS and self.after_section:
            self.paragraph.before = Break.NONE
        else:
            self.group.apply(word, number)
            self.paragraph.apply(word, number)

    def _actions(self) -> dict[str, Callable[[], None]]:
        ends = dict.fromkeys(_PARAGRAPH_ENDS, self._end_paragraph)
        return ends | {
            "page": self._break_page,
            "sect": self._end_section,
            "cell": self._end_cell,
            "row": self.table.end_row,
            "fldrslt": self._begin_result,
        }

    def _begin_result(self) -> None:
        self.group.folio = bool(_PAGE_FIELD.match(self.code))

    def _characters(self, token: Token) -> None:
        text = token.text
        if self.skip:
            dropped = min(self.skip, len(text))
            self.skip -= dropped
            text = text[dropped:]
        if token.kind != "symbol" and not text.isascii():
            raw = text.encode("latin-1")
            text = decoded(raw, self.group.encoding or self.encoding)
        self._put(text)

    def _put(self, text: str) -> None:
        """Send characters where the group's go."""
        group = self.group
        if group.sink is Sink.TEXT:
            self._count_change(group.change, text)
            if not (group.deleted or group.hidden):
                self.paragraph.add(text, group)
                self.after_section = self.after_section and not text.strip()
        elif group.sink is Sink.TITLE:
            self.title += text
        elif group.sink is Sink.FIELD_CODE:
            self.code += text
        elif group.sink is Sink.STYLES:
            self.styles[group.style] = self.styles.get(group.style, "") + text.partition(";")[0]

    def _count_change(self, change: str, text: str) -> None:
        if text.strip():
            self.changes += bool(change) and change != self.change
            self.change = change

    def _break_page(self) -> None:
        self._emit()
        self.paragraph = replace(self.paragraph.next(), before=Break.PAGE)

    def _end_section(self) -> None:
        self._end_paragraph()
        self.paragraph.before = Break.PAGE
        self.after_section = True

    def _end_paragraph(self) -> None:
        if self.group.deleted:
            return
        self._emit()
        self.count += 1
        self.paragraph = self.paragraph.next()
        if not self.open_asides:
            for block in self.aside:
                self._place(block)
            self.aside = []

    def _emit(self) -> None:
        paragraph = self.paragraph
        text = kept(paired(paragraph.text))
        if not text.strip() and paragraph.before is Break.NONE:
            return
        style = self.styles.get(paragraph.style, "").strip()
        worded = bool(text.strip())
        block = Block(
            text=text,
            locator=f"paragraph {self.count}",
            style=style,
            level=paragraph.level(style),
            bold=worded and paragraph.bold,
            italics=paragraph.italics(),
            before=paragraph.before,
            role=Role.FOLIO if worded and paragraph.folio else None,
        )
        if self.open_asides:
            role = self.open_asides[-1].role or block.role
            self.aside.append(replace(block, role=role, before=Break.NONE))
        else:
            self._place(block)

    def _place(self, block: Block) -> None:
        if self.paragraph.in_table:
            self.table.cell.append(block)
        else:
            self._end_table()
            self.blocks.append(block)

    def _leave_aside(self) -> None:
        self._end_paragraph()
        self.paragraph = self.open_asides.pop().around

    def _end_cell(self) -> None:
        self.paragraph.in_table = True
        self._end_paragraph()
        self.table.end_cell()

    def _end_table(self) -> None:
        self.blocks += table_blocks(self.table.end())
