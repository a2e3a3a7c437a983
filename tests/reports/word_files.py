"""Word files that are hard to copy, whole enough that a word processor opens them."""

from __future__ import annotations

import zipfile
from collections.abc import Mapping
from pathlib import Path

W = "http://schemas.openxmlformats.org/wordprocessingml/2006/main"
STRICT = "http://purl.oclc.org/ooxml/wordprocessingml/main"
_RELATIONS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
_STRICT_RELATIONS = "http://purl.oclc.org/ooxml/officeDocument/relationships"
_NAMESPACES = (
    f'xmlns:r="{_RELATIONS}" '
    'xmlns:mc="http://schemas.openxmlformats.org/markup-compatibility/2006" '
    'xmlns:wp="http://schemas.openxmlformats.org/drawingml/2006/wordprocessingDrawing" '
    'xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main" '
    'xmlns:wps="http://schemas.microsoft.com/office/word/2010/wordprocessingShape" '
    'xmlns:v="urn:schemas-microsoft-com:vml"'
)
_STYLES = (
    '<w:style w:type="paragraph" w:default="1" w:styleId="Normal"><w:name w:val="Normal"/></w:style>'
    '<w:style w:type="paragraph" w:styleId="Title"><w:name w:val="Title"/></w:style>'
    '<w:style w:type="paragraph" w:styleId="Heading2"><w:name w:val="heading 2"/></w:style>'
    '<w:style w:type="character" w:styleId="Loud"><w:name w:val="Loud"/><w:rPr><w:caps/></w:rPr></w:style>'
)
_WORD = "application/vnd.openxmlformats-officedocument.wordprocessingml"


def run(text: str, properties: str = "") -> str:
    """A run with some text."""
    own = f"<w:rPr>{properties}</w:rPr>" if properties else ""
    return f'<w:r>{own}<w:t xml:space="preserve">{text}</w:t></w:r>'


def paragraph(*runs: str, properties: str = "") -> str:
    """A paragraph of runs; what is no XML is put into one."""
    inner = "".join(each if each.startswith("<") else run(each) for each in runs)
    own = f"<w:pPr>{properties}</w:pPr>" if properties else ""
    return f"<w:p>{own}{inner}</w:p>"


def table(*rows: tuple[str, ...]) -> str:
    """A table whose cells hold this XML."""
    lines = "".join(
        f"<w:tr>{''.join(f'<w:tc>{cell}</w:tc>' for cell in row)}</w:tr>" for row in rows
    )
    grid = '<w:gridCol w:w="4000"/>' * len(rows[0])
    return f'<w:tbl><w:tblPr><w:tblW w:w="0" w:type="auto"/></w:tblPr><w:tblGrid>{grid}</w:tblGrid>{lines}</w:tbl>'


def text_box(content: str) -> str:
    """A run with a text box, once in the new way and once for older programs."""
    shape = (
        '<wp:inline><wp:extent cx="2000000" cy="600000"/><wp:docPr id="1" name="box"/>'
        '<a:graphic><a:graphicData uri="http://schemas.microsoft.com/office/word/2010/wordprocessingShape">'
        '<wps:wsp><wps:cNvSpPr txBox="1"/><wps:spPr/><wps:txbx><w:txbxContent>'
        f"{content}</w:txbxContent></wps:txbx><wps:bodyPr/></wps:wsp></a:graphicData></a:graphic></wp:inline>"
    )
    return (
        f'<w:r><mc:AlternateContent><mc:Choice Requires="wps"><w:drawing>{shape}</w:drawing></mc:Choice>'
        f"<mc:Fallback><w:pict><v:shape><v:textbox><w:txbxContent>{content}</w:txbxContent></v:textbox>"
        "</v:shape></w:pict></mc:Fallback></mc:AlternateContent></w:r>"
    )


def write(path: Path, body: str, *, strict: bool = False, **parts: str) -> Path:
    """A .docx with that body; ``parts`` are the contents of further parts: comments, footnotes, endnotes."""
    own, relations = (STRICT, _STRICT_RELATIONS) if strict else (W, _RELATIONS)
    contents = {"document": f"<w:body>{body}</w:body>", "styles": _STYLES, **parts}
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as package:
        package.writestr("[Content_Types].xml", _types(contents))
        package.writestr(
            "_rels/.rels", _rels({"rId1": ("officeDocument", "word/document.xml")}, relations)
        )
        others = [name for name in contents if name != "document"]
        rels = {f"rId{n}": (name, f"{name}.xml") for n, name in enumerate(others, 1)}
        package.writestr("word/_rels/document.xml.rels", _rels(rels, relations))
        for name, content in contents.items():
            xml = f'<w:{name} xmlns:w="{own}" {_NAMESPACES}>{content}</w:{name}>'
            package.writestr(f"word/{name}.xml", xml)
        package.writestr("customXml/kept.bin", bytes(range(256)))
    return path


def _types(contents: Mapping[str, str]) -> str:
    kinds = {"document": "document.main"}
    overrides = "".join(
        f'<Override PartName="/word/{name}.xml" ContentType="{_WORD}.{kinds.get(name, name)}+xml"/>'
        for name in contents
    )
    return (
        '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">'
        '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>'
        '<Default Extension="xml" ContentType="application/xml"/>'
        f'<Default Extension="bin" ContentType="application/octet-stream"/>{overrides}</Types>'
    )


def _rels(targets: Mapping[str, tuple[str, str]], base: str) -> str:
    inner = "".join(
        f'<Relationship Id="{own}" Type="{base}/{kind}" Target="{target}"/>'
        for own, (kind, target) in targets.items()
    )
    return f'<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">{inner}</Relationships>'
