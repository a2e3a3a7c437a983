"""The style sheet as a Word document, made with Word's own styles so that an author can go on in it."""

from __future__ import annotations

from datetime import UTC, datetime, time
from io import BytesIO

from docx import Document
from docx.document import Document as WordDocument
from docx.enum.text import WD_TAB_ALIGNMENT
from docx.oxml import parse_xml
from docx.oxml.ns import nsdecls
from docx.shared import Cm, Emu
from docx.table import Table
from docx.text.paragraph import Paragraph

from proofkit.reports.fault import one_line
from proofkit.reports.stylesheet.setting import LEGEND, SheetTable, about, day, tables, title
from proofkit.reports.stylesheet.word_styles import CELL, TABLE, set_styles
from proofkit.stylesheet.sheet import StyleSheet

_MARGIN = Cm(2)
_PAGE = (Cm(21), Cm(29.7))  # A4
_WIDTH = Emu(_PAGE[0] - 2 * _MARGIN)
_NO_CHARACTERS = dict.fromkeys((0xFFFE, 0xFFFF))
# How the width is shared out among the columns, by their heads.
_SHARES = {
    ("name", "how", "first on", "last on", "notes"): (0.26, 0.17, 0.14, 0.14, 0.29),
    ("matter", "form", "how", "first on", "notes"): (0.24, 0.18, 0.18, 0.13, 0.27),
    ("matter", "form or words", "how", "first on", "notes"): (0.14, 0.36, 0.17, 0.14, 0.19),
    ("word", "how", "first on", "notes"): (0.26, 0.17, 0.14, 0.43),
    ("to decide", "in the manuscript"): (0.36, 0.64),
}


def as_word(sheet: StyleSheet) -> bytes:
    """The whole sheet on A4: Title, Subtitle, a Heading 1 and a table for each part."""
    document = Document()
    set_styles(document, sheet.english)
    _set_properties(document, sheet)
    _set_page(document, sheet)
    document.add_paragraph(_text(title(sheet)), "Title")
    document.add_paragraph(_text(_opening(about(sheet))), "Subtitle")
    document.add_paragraph(LEGEND)
    for notice in sheet.notices:
        document.add_paragraph(_text(f"Note: {notice.text}"))
    for table in tables(sheet):
        _add_section(document, table)
    raw = BytesIO()
    document.save(raw)
    return raw.getvalue()


def _set_properties(document: WordDocument, sheet: StyleSheet) -> None:
    about_it = document.core_properties
    about_it.title = _text(f"{title(sheet)}: style sheet")
    about_it.author = about_it.comments = about_it.last_modified_by = ""
    about_it.created = about_it.modified = datetime.combine(sheet.made, time(), UTC)


def _set_page(document: WordDocument, sheet: StyleSheet) -> None:
    """The paper, the book and the day at the head of every page, the page's number at its foot."""
    page = document.sections[0]
    page.page_width, page.page_height = _PAGE
    page.left_margin = page.right_margin = page.top_margin = page.bottom_margin = _MARGIN
    head, foot = page.header.paragraphs[0], page.footer.paragraphs[0]
    for paragraph in (head, foot):
        paragraph.paragraph_format.tab_stops.add_tab_stop(_WIDTH, WD_TAB_ALIGNMENT.RIGHT)
    for style in ("Header", "Footer"):
        document.styles[style].paragraph_format.tab_stops.clear_all()
    head.add_run(f"{_text(title(sheet))}: style sheet\t{day(sheet)}")
    foot.add_run("\tPage ")
    _add_field(foot, "PAGE")
    foot.add_run(" of ")
    _add_field(foot, "NUMPAGES")


def _add_field(paragraph: Paragraph, name: str) -> None:
    """A number that Word works out; it shows 1 until Word has."""
    field = f'<w:fldSimple {nsdecls("w")} w:instr="{name}"><w:r><w:t>1</w:t></w:r></w:fldSimple>'
    paragraph._p.append(parse_xml(field))  # noqa: SLF001 - python-docx has no call for a field


def _add_section(document: WordDocument, section: SheetTable) -> None:
    document.add_heading(section.heading, level=1)
    if section.remark:
        remark = document.add_paragraph(_text(section.remark))
        remark.paragraph_format.keep_with_next = bool(section.rows)
    if not section.rows:
        return
    rows = (section.heads, *section.rows)
    table = document.add_table(rows=len(rows), cols=len(section.heads), style=TABLE)
    table.autofit = False
    _set_widths(table, section.heads)
    for row, cells in zip(table.rows, rows, strict=True):
        # A row stays whole at the end of a page.
        row._tr.get_or_add_trPr().append(parse_xml(f"<w:cantSplit {nsdecls('w')}/>"))  # noqa: SLF001 - as above
        for cell, text in zip(row.cells, cells, strict=True):
            cell.paragraphs[0].style = CELL
            cell.paragraphs[0].add_run(_text(text))
    _repeat_heads(table)


def _set_widths(table: Table, heads: tuple[str, ...]) -> None:
    """Word goes by the cells' widths, other programs by the columns'."""
    for column, share in zip(table.columns, _SHARES[heads], strict=True):
        column.width = Emu(int(_WIDTH * share))
        for cell in column.cells:
            cell.width = column.width


def _repeat_heads(table: Table) -> None:
    """Have the heads stand again over what runs on to the next page, and never alone at a page's end."""
    heads = table.rows[0]
    heads._tr.get_or_add_trPr().append(parse_xml(f"<w:tblHeader {nsdecls('w')}/>"))  # noqa: SLF001 - as above
    for cell in heads.cells:
        cell.paragraphs[0].paragraph_format.keep_with_next = True


def _opening(phrase: str) -> str:
    return phrase[:1].upper() + phrase[1:]


def _text(text: str) -> str:
    """The text without what XML can't hold: signs that steer a terminal, halves of characters."""
    return one_line(text).encode(errors="replace").decode().translate(_NO_CHARACTERS)
