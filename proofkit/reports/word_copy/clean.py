"""A clean Word document of a book that came in another format, set as a manuscript is."""

from __future__ import annotations

import io
from collections.abc import Mapping
from dataclasses import dataclass
from itertools import pairwise

from docx import Document
from docx.document import Document as WordDocument
from docx.shared import Pt, RGBColor
from docx.text.paragraph import Paragraph as WordParagraph

from proofkit.book import Book, Page, Paragraph, Role

_FACE = "Georgia"
_SIZES = {"Normal": 12, "Title": 24, "Subtitle": 13, "Heading 1": 16, "Heading 2": 13}
_SPACES = {
    "Normal": (0, 9),
    "Title": (0, 6),
    "Subtitle": (0, 12),
    "Heading 1": (24, 9),
    "Heading 2": (18, 6),
}
_BLACK = RGBColor(0, 0, 0)
_NO_CHARACTERS = dict.fromkeys((*range(9), 11, 12, *range(14, 32), 0xFFFE, 0xFFFF))


@dataclass(frozen=True, slots=True, kw_only=True)
class Clean:
    """The document, and the locators that its paragraphs have: of each page's, and of the pages' labels."""

    content: bytes
    locators: Mapping[tuple[int, int], str]
    labels: Mapping[int, str]


def clean_copy(book: Book) -> Clean:
    """The book as a Word document: title, labels of pages as headings, paragraphs, italics."""
    document = Document()
    _set_styles(document)
    document.core_properties.title = _text(book.title)
    document.core_properties.author = document.core_properties.comments = ""
    count = 0
    locators: dict[tuple[int, int], str] = {}
    labels: dict[int, str] = {}
    titled = False
    for page in book.pages:
        if page.label:
            document.add_paragraph(_text(page.label), "Heading 2")
            count += 1
            labels[page.number] = f"paragraph {count}"
        breaks = not page.label and page.number > 1
        for index, paragraph in enumerate(page.paragraphs):
            style = _style(paragraph, titled=titled)
            titled = titled or style == "Title"
            made = document.add_paragraph(style=style)
            made.paragraph_format.page_break_before = (breaks and index == 0) or None
            _fill(made, page, paragraph)
            count += 1
            locators[page.number, index] = f"paragraph {count}"
    raw = io.BytesIO()
    document.save(raw)
    return Clean(content=raw.getvalue(), locators=locators, labels=labels)


def _style(paragraph: Paragraph, *, titled: bool) -> str:
    if paragraph.role is Role.TITLE:
        return "Heading 1" if titled else "Title"
    return "Subtitle" if paragraph.role is Role.AUTHOR else "Normal"


def _fill(made: WordParagraph, page: Page, paragraph: Paragraph) -> None:
    """The paragraph's characters, in runs that are italic or not; a newline is a line break."""
    italic = [(max(a, paragraph.start), min(b, paragraph.end)) for a, b in page.emphasis]
    inside = [(a, b) for a, b in italic if a < b]
    bounds = sorted({paragraph.start, paragraph.end, *(at for both in inside for at in both)})
    for start, end in pairwise(bounds):
        run = made.add_run(_text(page.text[start:end]))
        if any(a <= start and end <= b for a, b in inside):
            run.italic = True


def _set_styles(document: WordDocument) -> None:
    for name, size in _SIZES.items():
        style = document.styles[name]
        style.font.name, style.font.size, style.font.color.rgb = _FACE, Pt(size), _BLACK
        style.font.italic = None if name == "Normal" else False
        before, after = _SPACES[name]
        layout = style.paragraph_format
        layout.space_before, layout.space_after, layout.line_spacing = Pt(before), Pt(after), 1.3
        # A theme's face would come before the style's; a rule and letters set apart are for a brochure.
        for odd in style.element.xpath("w:pPr/w:pBdr | w:pPr/w:numPr | w:rPr/w:spacing"):
            odd.getparent().remove(odd)
        for face in style.element.xpath("w:rPr/w:rFonts"):
            for attribute in [a for a in face.attrib if a.endswith("Theme")]:
                del face.attrib[attribute]


def _text(text: str) -> str:
    """The text without what XML can't hold."""
    return text.encode(errors="replace").decode().translate(_NO_CHARACTERS)
