"""The Word document's styles: what an author can change in one place, in Word itself."""

from __future__ import annotations

from docx.document import Document as WordDocument
from docx.enum.style import WD_STYLE_TYPE
from docx.oxml import parse_xml
from docx.oxml.ns import nsdecls, nsmap, qn
from docx.oxml.xmlchemy import BaseOxmlElement as Element
from docx.shared import Pt, RGBColor

from proofkit.settings import English

CELL = "Table Text"
TABLE = "Style Sheet Table"

_BLACK = RGBColor(0, 0, 0)
_INK = RGBColor(0x7A, 0x1F, 0x5C)  # the second ink, dark enough to print
_FACE = "Georgia"
_SIZES = {"Normal": 10.5, "Title": 24, "Subtitle": 11, "Heading 1": 14, "Header": 9, "Footer": 9}
# Hairlines between the rows, a rule under the heads, the heads in bold; no boxes.
_TABLE_STYLE = """
<w:style {ns} w:type="table" w:customStyle="1" w:styleId="StyleSheetTable">
  <w:name w:val="{name}"/><w:basedOn w:val="TableNormal"/><w:uiPriority w:val="59"/><w:qFormat/>
  <w:tblPr><w:tblBorders>
    <w:bottom w:val="single" w:sz="4" w:space="0" w:color="808080"/>
    <w:insideH w:val="single" w:sz="2" w:space="0" w:color="C8C8C8"/>
  </w:tblBorders><w:tblCellMar>
    <w:top w:w="40" w:type="dxa"/><w:left w:w="0" w:type="dxa"/>
    <w:bottom w:w="40" w:type="dxa"/><w:right w:w="140" w:type="dxa"/>
  </w:tblCellMar></w:tblPr>
  <w:tblStylePr w:type="firstRow"><w:rPr><w:b/><w:color w:val="7A1F5C"/></w:rPr>
    <w:tcPr><w:tcBorders>
      <w:bottom w:val="single" w:sz="6" w:space="0" w:color="7A1F5C"/>
    </w:tcBorders></w:tcPr></w:tblStylePr>
</w:style>
"""


def set_styles(document: WordDocument, english: English) -> None:
    """Give the document its styles, and tell Word which English it is in."""
    styles = document.styles
    for name, size in _SIZES.items():
        style = styles[name]
        style.font.size = Pt(size)
        style.font.color.rgb = _INK if name == "Heading 1" else _BLACK
        _set_face(style.element.get_or_add_rPr())
    styles["Subtitle"].font.italic = False
    _take_out(styles["Title"].element, "w:pPr/w:pBdr")  # a blue rule
    _take_out(styles["Subtitle"].element, "w:pPr/w:numPr")  # a list that is none
    for name in ("Title", "Subtitle"):
        _take_out(styles[name].element, "w:rPr/w:spacing")  # letters set apart
    _set_spacing(document)
    _add_table_styles(document)
    for language in styles.element.iter(qn("w:lang")):
        language.set(qn("w:val"), english.code)


def _set_face(properties: Element) -> None:
    """One face for all scripts; a theme's face would come before it."""
    _take_out(properties, "w:rFonts")
    names = " ".join(f'w:{script}="{_FACE}"' for script in ("ascii", "hAnsi", "eastAsia", "cs"))
    properties.insert(0, parse_xml(f"<w:rFonts {nsdecls('w')} {names}/>"))


def _take_out(element: Element, path: str) -> None:
    for found in element.findall(path, nsmap):
        found.getparent().remove(found)


def _set_spacing(document: WordDocument) -> None:
    """Points before and after a paragraph of each style."""
    for name, before, after in (
        ("Normal", 0, 6),
        ("Title", 0, 2),
        ("Subtitle", 0, 12),
        ("Heading 1", 18, 4),
    ):
        layout = document.styles[name].paragraph_format
        layout.space_before, layout.space_after, layout.line_spacing = Pt(before), Pt(after), 1.1


def _add_table_styles(document: WordDocument) -> None:
    cell = document.styles.add_style(CELL, WD_STYLE_TYPE.PARAGRAPH)
    cell.base_style = document.styles["Normal"]
    cell.font.size = Pt(9.5)
    cell.paragraph_format.space_after = Pt(0)
    cell.quick_style = True
    document.styles.element.append(parse_xml(_TABLE_STYLE.format(ns=nsdecls("w"), name=TABLE)))
