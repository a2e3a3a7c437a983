"""Small writers: one manuscript in each of the five formats, and single Word and OpenDocument parts.

They write no more than a word processor must, so that a test says what its file holds.
"""

from __future__ import annotations

import io
import zipfile
from dataclasses import dataclass
from pathlib import Path
from xml.sax.saxutils import escape

W = 'xmlns:w="http://schemas.openxmlformats.org/wordprocessingml/2006/main"'
WORD_NAMESPACES = (
    f"{W} "
    'xmlns:mc="http://schemas.openxmlformats.org/markup-compatibility/2006" '
    'xmlns:wps="http://schemas.microsoft.com/office/word/2010/wordprocessingShape" '
    'xmlns:v="urn:schemas-microsoft-com:vml"'
)
ODT_NAMESPACES = (
    " ".join(
        f'xmlns:{prefix}="urn:oasis:names:tc:opendocument:xmlns:{name}:1.0"'
        for prefix, name in (
            ("office", "office"),
            ("text", "text"),
            ("style", "style"),
            ("table", "table"),
            ("draw", "drawing"),
            ("fo", "xsl-fo-compatible"),
            ("meta", "meta"),
            ("manifest", "manifest"),
        )
    )
    + ' xmlns:dc="http://purl.org/dc/elements/1.1/"'
)
WORD_STYLES = (
    '<w:style w:styleId="Title"><w:name w:val="Title"/></w:style>'
    '<w:style w:styleId="Heading1"><w:name w:val="heading 1"/></w:style>'
    '<w:style w:styleId="Heading2"><w:name w:val="heading 2"/></w:style>'
    '<w:style w:styleId="NewPage"><w:name w:val="New page"/><w:basedOn w:val="Base"/></w:style>'
    '<w:style w:styleId="Base"><w:name w:val="Base"/><w:pPr><w:pageBreakBefore/></w:pPr></w:style>'
    '<w:style w:styleId="ArtNote"><w:name w:val="Art note"/></w:style>'
)
ODT_STYLES = (
    '<style:style style:name="P1" style:parent-style-name="Standard">'
    '<style:paragraph-properties fo:break-before="page"/></style:style>'
    '<style:style style:name="P2" style:parent-style-name="Standard">'
    '<style:paragraph-properties fo:break-after="page"/></style:style>'
    '<style:style style:name="B1"><style:text-properties fo:font-weight="bold"/></style:style>'
    '<style:style style:name="I1"><style:text-properties fo:font-style="italic"/></style:style>'
    '<style:style style:name="I2" style:parent-style-name="I1"/>'
    '<style:style style:name="U1"><style:text-properties fo:font-style="normal"/></style:style>'
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One paragraph of a manuscript; ``kind`` is title, mark, text or break."""

    kind: str
    text: str = ""


def word_paragraph(text: str, *, style: str = "", before: str = "") -> str:
    """A Word paragraph; a newline in the text is a line break, ``before`` goes before its runs."""
    runs = "<w:r><w:br/></w:r>".join(
        f'<w:r><w:t xml:space="preserve">{escape(line)}</w:t></w:r>' for line in text.split("\n")
    )
    properties = f'<w:pPr><w:pStyle w:val="{style}"/></w:pPr>' if style else ""
    return f"<w:p>{properties}{before}{runs}</w:p>"


def write_word(path: Path, body: str, **parts: str) -> Path:
    """A .docx with that body; ``parts`` are further parts of word/ by name (footnotes, …) or other styles."""
    document = f"<w:document {WORD_NAMESPACES}><w:body>{body}</w:body></w:document>"
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as package:
        package.writestr("[Content_Types].xml", "<Types/>")
        package.writestr("word/document.xml", document)
        parts = {"styles": f"<w:styles {W}>{WORD_STYLES}</w:styles>"} | parts
        for name, content in parts.items():
            package.writestr(f"word/{name}.xml", content)
    return path


def write_odt(path: Path, body: str, **parts: str) -> Path:
    """An .odt with that text; ``parts`` are further parts by name."""
    content = (
        f"<office:document-content {ODT_NAMESPACES}>"
        f"<office:automatic-styles>{ODT_STYLES}</office:automatic-styles>"
        f"<office:body><office:text>{body}</office:text></office:body></office:document-content>"
    )
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as package:
        package.writestr("mimetype", "application/vnd.oasis.opendocument.text")
        package.writestr("content.xml", content)
        for name, part in parts.items():
            package.writestr(f"{name}.xml", part)
    return path


def write_rtf(path: Path, body: str) -> Path:
    """An .rtf with that body, a stylesheet and a table of fonts before it."""
    head = (
        r"{\rtf1\ansi\ansicpg1252\uc1{\fonttbl{\f0\fcharset0 Times;}}"
        r"{\stylesheet{\s0 Normal;}{\s1 heading 1;}{\s2 heading 2;}}"
    )
    path.write_bytes(f"{head}{body}}}".encode("ascii"))
    return path


def rtf_text(text: str) -> str:
    """A text in Rich Text's own spelling."""
    units = text.encode("utf-16-le")
    codes = [int.from_bytes(units[at : at + 2], "little") for at in range(0, len(units), 2)]
    return "".join(_rtf_character(code) for code in codes)


def _rtf_character(code: int) -> str:
    character = chr(code)
    if character in "\\{}":
        return f"\\{character}"
    if character == "\n":
        return r"\line "
    return character if 32 <= code < 127 else f"\\u{code - 65536 if code > 32767 else code}?"


def written(lines: list[Line], suffix: str, folder: Path) -> Path:
    """The manuscript in the format of ``suffix`` (".docx", …)."""
    path = folder / f"manuscript{suffix}"
    if suffix == ".docx":
        return write_word(path, "".join(_word_line(line) for line in lines))
    if suffix == ".odt":
        return write_odt(path, "".join(_odt_lines(lines)))
    if suffix == ".rtf":
        return write_rtf(path, "".join(_rtf_line(line) for line in lines))
    text = "".join(_text_line(line, markdown=suffix == ".md") for line in lines)
    path.write_text(text, encoding="utf-8")
    return path


def _word_line(line: Line) -> str:
    if line.kind == "break":
        return '<w:p><w:r><w:br w:type="page"/></w:r></w:p>'
    return word_paragraph(line.text, style="Title" if line.kind == "title" else "")


def _odt_lines(lines: list[Line]) -> list[str]:
    found, style = [], ""
    for line in lines:
        if line.kind == "break":
            # Two breaks in a row: an empty page.
            found += ['<text:p text:style-name="P1"/>'] if style else []
            style = "P1"
            continue
        own = style or ("Title" if line.kind == "title" else "")
        style = ""
        found.append(odt_paragraph(line.text, style=own))
    return found


def odt_paragraph(text: str, *, style: str = "") -> str:
    """An OpenDocument paragraph; a newline is a line break, and runs of spaces are kept."""
    lines = "<text:line-break/>".join(
        escape(line).replace("  ", " <text:s/>") for line in text.split("\n")
    )
    attribute = f' text:style-name="{style}"' if style else ""
    return f"<text:p{attribute}>{lines}</text:p>"


def _rtf_line(line: Line) -> str:
    if line.kind == "break":
        return r"\page "
    style = r"\s1 " if line.kind == "title" else ""
    return f"\\pard {style}{rtf_text(line.text)}\\par\n"


def _text_line(line: Line, *, markdown: bool) -> str:
    if line.kind == "break":
        return "\f"
    if markdown and line.kind in {"title", "mark"}:
        return f"{'#' if line.kind == 'title' else '##'} {line.text}\n\n"
    return line.text.replace("\n", "  \n" if markdown else "\n") + "\n\n"


def zipped(parts: dict[str, bytes]) -> bytes:
    """A zip package with these parts."""
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w", zipfile.ZIP_DEFLATED) as package:
        for name, data in parts.items():
            package.writestr(name, data)
    return buffer.getvalue()
