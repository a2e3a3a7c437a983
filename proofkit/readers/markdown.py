"""Markdown files (.md), by markdown-it-py: CommonMark and tables, as authors write them.

Left out of CommonMark: indented code (authors indent paragraphs), link references (they would eat
"[Page 3]: …") and a heading made by a line of dashes under it (authors part pages by those). Marks of
emphasis are dropped; the dash and the number of a list item are kept, since a story's lines of speech
and its countdowns look like lists. Comments and HTML tags are dropped.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace

from markdown_it import MarkdownIt
from markdown_it.token import Token

from proofkit.readers.blocks import SOFT, Block, Break, Source
from proofkit.readers.characters import kept
from proofkit.readers.encoding import decoded
from proofkit.readers.italics import Italics, italics_of
from proofkit.readers.tables import table_blocks

_FRONT_MATTER = re.compile(r"\A---\n(?P<fields>(?:[\w-]+:.*\n|[ \t].*\n)*?)(?:---|\.\.\.)\n")
_TITLE_FIELD = re.compile(r"^title:\s*[\"']?(?P<title>.*?)[\"']?\s*$", re.MULTILINE)
_PAGE_BREAK = re.compile(r"(?:page-break|break)-(?:before|after)\s*:|\\(?:newpage|pagebreak)\b")
_LINE_TAG = re.compile(r"<br\s*/?>", re.IGNORECASE)
_TAG = re.compile(r"<!--.*?-->|<[^>]*>", re.DOTALL)


def read_markdown(data: bytes, name: str) -> Source:
    """The blocks of a Markdown file. ``name`` is the file's name, for sentences."""
    text, remarks = decoded(data, name)
    text = kept(text)
    title, first_line = "", 1
    if fields := _FRONT_MATTER.match(text):
        found = _TITLE_FIELD.search(fields["fields"])
        title = found["title"] if found else ""
        first_line += fields[0].count("\n")
        text = text[fields.end() :]
    return Source(blocks=tuple(_blocks(text, first_line)), title=title, remarks=remarks)


def _blocks(text: str, line: int) -> Iterator[Block]:
    """The blocks of every part between form feeds; ``line`` is the first one's number."""
    # What is nested deeper than this bound is dropped; the standard bound of 20 is too near.
    parser = (
        MarkdownIt("commonmark", {"maxNesting": 100}).enable("table").disable(["code", "reference"])
    )
    for index, part in enumerate(text.split("\f")):
        if index:
            yield Block(text="", before=Break.PAGE)
        yield from _Walk(tokens=parser.parse(part), line=line).blocks()
        line += part.count("\n")


@dataclass(slots=True, kw_only=True)
class _Walk:
    """One walk over a part's tokens. ``line`` is the number of the part's first line."""

    tokens: list[Token]
    line: int
    at: int = 0

    def blocks(self, until: str = "") -> Iterator[Block]:
        """The blocks up to the token ``until``, or to the end."""
        while self.at < len(self.tokens):
            token = self.tokens[self.at]
            self.at += 1
            if until and token.type == until:
                return
            yield from self._block(token)

    def _block(self, token: Token) -> Iterator[Block]:
        if token.type == "heading_open":
            yield from self._heading(token)
        elif token.type == "list_item_open":
            marker = token.info + token.markup if token.info else token.markup
            for index, block in enumerate(self.blocks("list_item_close")):
                dash = marker if index == 0 and marker not in {"*", "+"} else ""
                yield _listed(block, dash) if dash else block
        elif token.type == "table_open":
            yield from table_blocks(list(self._rows()))
        elif token.type == "inline":
            yield from self._paragraph(token)
        elif token.type in {"fence", "code_block"}:
            yield self._at(token, token.content.rstrip("\n"))
        elif token.type == "html_block":
            yield from self._html(token)

    def _heading(self, token: Token) -> Iterator[Block]:
        inline = self.tokens[self.at]
        self.at += 2
        level = int(token.tag[1])
        block = self._at(token, _inline_text(inline))
        if token.markup.startswith("-"):
            yield block
        elif block.text.strip():
            yield replace(block, level=level)
        else:
            yield replace(block, text="", level=level, before=Break.MARK)

    def _paragraph(self, token: Token) -> Iterator[Block]:
        text = _inline_text(token)
        if _PAGE_BREAK.search(text):
            yield Block(text="", before=Break.PAGE)
        elif text.strip():
            yield replace(self._at(token, text), bold=_all_bold(token), italics=_italics(token))

    def _html(self, token: Token) -> Iterator[Block]:
        if _PAGE_BREAK.search(token.content):
            yield Block(text="", before=Break.PAGE)
        text = _TAG.sub("", _LINE_TAG.sub("\n", token.content)).strip()
        if text:
            yield self._at(token, text.replace("\n", SOFT))

    def _rows(self) -> Iterator[list[list[Block]]]:
        row: list[list[Block]] = []
        while self.tokens[self.at].type != "table_close":
            token = self.tokens[self.at]
            self.at += 1
            if token.type == "tr_open":
                row = []
            elif token.type == "inline":
                cell = self._at(token, _inline_text(token))
                row.append([replace(cell, italics=_italics(token))])
            elif token.type == "tr_close" and any(block.text for cell in row for block in cell):
                yield row
        self.at += 1

    def _at(self, token: Token, text: str) -> Block:
        line = self.line + (token.map[0] if token.map else 0)
        return Block(text=text, locator=f"line {line}")


def _inline_text(token: Token) -> str:
    return "".join(_piece(child) for child in token.children or [])


def _piece(child: Token) -> str:
    if child.type in {"text", "code_inline", "text_special"}:
        return child.content
    if child.type == "softbreak":
        return SOFT
    if child.type == "hardbreak" or (
        child.type == "html_inline" and _LINE_TAG.match(child.content)
    ):
        return "\n"
    return ""


def _listed(block: Block, dash: str) -> Block:
    """The block with a list item's dash or number before it."""
    return replace(block, text=f"{dash} {block.text}", italics=block.italics.after(dash))


def _italics(token: Token) -> Italics:
    """What of a paragraph stands in emphasis; strong emphasis is bold."""
    pieces, depth = [], 0
    for child in token.children or []:
        if child.type in {"em_open", "em_close"}:
            depth += 1 if child.type == "em_open" else -1
        pieces.append((_piece(child), depth > 0))
    return italics_of(pieces)


def _all_bold(token: Token) -> bool:
    """Whether all words of a paragraph stand in strong emphasis."""
    depth = 0
    for child in token.children or []:
        if child.type in {"strong_open", "strong_close"}:
            depth += 1 if child.type == "strong_open" else -1
        elif depth == 0 and child.content.strip():
            return False
    return True
