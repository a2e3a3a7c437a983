"""A paper of the pack as a Word document, in the styles that the style sheet has."""

from __future__ import annotations

from datetime import datetime
from io import BytesIO

from docx import Document
from docx.document import Document as WordDocument
from docx.enum.text import WD_TAB_ALIGNMENT
from docx.oxml import parse_xml
from docx.oxml.ns import nsdecls
from docx.shared import Cm, Emu
from docx.table import Table

from proofkit.reports.fault import one_line
from proofkit.reports.handoff.paper import Columns, Paper, Part
from proofkit.reports.stylesheet.word_styles import CELL, TABLE, set_styles
from proofkit.settings import English

_MARGIN = Cm(2)
_PAGE = (Cm(21), Cm(29.7))  # A4
_WIDTH = Emu(_PAGE[0] - 2 * _MARGIN)
_NO_CHARACTERS = dict.fromkeys((0xFFFE, 0xFFFF))
_BOX = "☐"
_HANG = Cm(0.7)


def as_word(paper: Paper, book: str, english: English, made: datetime) -> bytes:
    """The paper on A4, under the title of the ``book``; ``made`` is its time, in UTC."""
    document = Document()
    set_styles(document, english)
    _set_properties(document, f"{book}: {paper.name.lower()}", made)
    _set_page(document, f"{book}: {paper.name.lower()}")
    document.add_paragraph(_text(f"{book}: {paper.name.lower()}"), "Title")
    document.add_paragraph(_text(paper.about), "Subtitle")
    for part in paper.parts:
        _add(document, part)
    raw = BytesIO()
    document.save(raw)
    return raw.getvalue()


def _set_properties(document: WordDocument, title: str, made: datetime) -> None:
    properties = document.core_properties
    properties.title = _text(title)[:255]  # Word takes no longer one
    properties.author = properties.comments = properties.last_modified_by = ""
    properties.created = properties.modified = made


def _set_page(document: WordDocument, head: str) -> None:
    page = document.sections[0]
    page.page_width, page.page_height = _PAGE
    page.left_margin = page.right_margin = page.top_margin = page.bottom_margin = _MARGIN
    document.styles["Footer"].paragraph_format.tab_stops.clear_all()
    foot = page.footer.paragraphs[0]
    foot.paragraph_format.tab_stops.add_tab_stop(_WIDTH, WD_TAB_ALIGNMENT.RIGHT)
    foot.add_run(f"{_text(head)}\tPage ")
    # A number that Word works out; it shows 1 until Word has.
    field = f'<w:fldSimple {nsdecls("w")} w:instr="PAGE"><w:r><w:t>1</w:t></w:r></w:fldSimple>'
    foot._p.append(parse_xml(field))  # noqa: SLF001 - python-docx has no call for a field


def _add(document: WordDocument, part: Part) -> None:
    if part.heading:
        document.add_heading(_text(part.heading), level=1)
    for sentence in part.says:
        document.add_paragraph(_text(sentence))
    for item in part.lists:
        paragraph = document.add_paragraph(f"{_BOX if part.to_tick else '•'}\t{_text(item)}")
        layout = paragraph.paragraph_format
        layout.left_indent, layout.first_line_indent = _HANG, Emu(-_HANG)
        layout.tab_stops.add_tab_stop(_HANG)
    if part.table:
        _add_table(document, part.table)


def _add_table(document: WordDocument, columns: Columns) -> None:
    rows = (columns.heads, *columns.rows)
    table: Table = document.add_table(rows=len(rows), cols=len(columns.heads), style=TABLE)
    table.autofit = False
    for column, share in zip(table.columns, columns.shares, strict=True):
        # Word goes by the cells' widths, other programs by the columns'.
        column.width = Emu(int(_WIDTH * share))
        for cell in column.cells:
            cell.width = column.width
    for row, texts in zip(table.rows, rows, strict=True):
        # A row stays whole at the end of a page.
        row._tr.get_or_add_trPr().append(parse_xml(f"<w:cantSplit {nsdecls('w')}/>"))  # noqa: SLF001 - as above
        for cell, text in zip(row.cells, texts, strict=True):
            cell.paragraphs[0].style = CELL
            cell.paragraphs[0].add_run(_text(text))
    heads = table.rows[0]
    heads._tr.get_or_add_trPr().append(parse_xml(f"<w:tblHeader {nsdecls('w')}/>"))  # noqa: SLF001 - as above
    for cell in heads.cells:
        cell.paragraphs[0].paragraph_format.keep_with_next = True


def _text(text: str) -> str:
    """The text without what XML can't hold: signs that steer a terminal, halves of characters."""
    return one_line(text).encode(errors="replace").decode().translate(_NO_CHARACTERS)
