"""The copy's package: the manuscript's own, byte for byte, but for the text's marks and the comments."""

from __future__ import annotations

import io
import posixpath
import re
import zipfile
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

from lxml import etree

from proofkit.problem import Unusable
from proofkit.readers.elements import Element, attribute, local
from proofkit.readers.package import Package
from proofkit.readers.word import WordFile
from proofkit.reports.word_copy.ranges import namespace

AUTHOR = "proofkit"
_DATE = "%Y-%m-%dT%H:%M:%SZ"
# Small and set close, whatever the manuscript's own text is like: 20 half points, no indent.
_COMMENT = (
    '<w:comment xmlns:w="{own}" w:id="{number}" w:author="proofkit" w:date="{date}" w:initials="pk"><w:p>'
    '<w:pPr><w:spacing w:before="0" w:after="0" w:line="240" w:lineRule="auto"/>'
    '<w:ind w:left="0" w:right="0" w:firstLine="0"/></w:pPr>'
    "<w:r><w:annotationRef/></w:r>"
    '<w:r><w:rPr><w:sz w:val="20"/></w:rPr><w:t xml:space="preserve"/></w:r></w:p></w:comment>'
)
_CONTENT_TYPES = "[Content_Types].xml"
_TYPE = "application/vnd.openxmlformats-officedocument.wordprocessingml.comments+xml"
_PLAIN = "application/vnd.openxmlformats-officedocument.wordprocessingml.document.main+xml"
_RELATIONS = "http://schemas.openxmlformats.org/package/2006/relationships"
_KIND = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/comments"
_STRICT = "http://purl.oclc.org/ooxml/"
_STRICT_KIND = "http://purl.oclc.org/ooxml/officeDocument/relationships/comments"
_KEY = re.compile(r".*\[([2-9bcdfghjkmnpqrstvwxz]{4,7})\]", re.DOTALL)
_NO_CHARACTERS = dict.fromkeys((0xFFFE, 0xFFFF))


@dataclass(frozen=True, slots=True, kw_only=True)
class Note:
    """A comment: its id in the file, and what it says."""

    number: int
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Comments:
    """The comments part of a Word file: its name, its tree, and the further parts that change with it."""

    part: str
    root: Element
    more: Mapping[str, Element]

    def first_free(self, document: Element) -> int:
        """The first id that no comment has, nor any mark that is left of one."""
        marks = (e for e in document.iter() if local(e).startswith("comment"))
        used = [attribute(e, "id") for e in (*self.root, *marks)]
        return max((int(number) for number in used if number.isdigit()), default=-1) + 1

    def own_keys(self) -> tuple[str, ...]:
        """The keys of the comments that are proofkit's own already, where a copy is copied again."""
        own = (c for c in self.root if local(c) == "comment" and attribute(c, "author") == AUTHOR)
        texts = ("".join(e.text or "" for e in c.iter() if local(e) == "t") for c in own)
        return tuple(found[1] for text in texts if (found := _KEY.search(text)))


def comments_of(package: Package, word: WordFile) -> Comments:
    """The file's own comments part, or a new one with its entries in the file's lists.

    Raises Unusable where ``as_document`` does.
    """
    retyped = as_document(package, word)
    folder, _, name = word.part.rpartition("/")
    relations_part = posixpath.join(folder, "_rels", f"{name}.rels")
    relations = package.xml(relations_part)
    if relations is None:
        relations = etree.Element(f"{{{_RELATIONS}}}Relationships", nsmap={None: _RELATIONS})
    for relation in relations:
        if attribute(relation, "Type").endswith("/relationships/comments"):
            target = attribute(relation, "Target")
            part = posixpath.normpath(posixpath.join(f"/{folder}", target)).lstrip("/")
            root = package.xml(part)
            if root is not None:
                return Comments(part=part, root=root, more=retyped)
    part = _free_name(package, folder)
    more = {relations_part: _related(relations, part, strict=_is_strict(word))}
    types = retyped[_CONTENT_TYPES] if retyped else package.xml(_CONTENT_TYPES)
    if types is not None:
        more[_CONTENT_TYPES] = _typed(types, part)
    own = namespace(word.root)
    return Comments(
        part=part, root=etree.Element(f"{{{own}}}comments", nsmap={"w": own}), more=more
    )


def as_document(package: Package, word: WordFile) -> Mapping[str, Element]:
    """The list of types with a template's main part as a document's, if it is one: a copy ends in .docx.

    Raises Unusable for a document with macros, which Word opens under its own ending only.
    """
    types = package.xml(_CONTENT_TYPES)
    for entry in types if types is not None else ():
        kind = attribute(entry, "ContentType")
        if attribute(entry, "PartName") != f"/{word.part}" or kind == _PLAIN:
            continue
        if "macroEnabled" in kind:
            raise Unusable(
                f"“{package.name}” can hold macros, and a Word copy can't: save the manuscript as .docx "
                "and check that."
            )
        if "template" in kind and types is not None:
            entry.set("ContentType", _PLAIN)
            return {_CONTENT_TYPES: types}
    return {}


def add_comments(comments: Comments, notes: Sequence[Note], made: datetime) -> None:
    """Put the comments into their part."""
    own = namespace(comments.root)
    for note in notes:
        text = note.text.encode(errors="replace").decode().translate(_NO_CHARACTERS)
        xml = _COMMENT.format(own=own, number=note.number, date=made.strftime(_DATE))
        comment = etree.fromstring(xml)
        for element in comment.iter(f"{{{own}}}t"):
            element.text = text
        comments.root.append(comment)


def repacked(content: bytes, changed: Mapping[str, Element]) -> bytes:
    """A zip package with some of its parts replaced or added; all others stay as they are."""
    waiting = {
        name: etree.tostring(
            root.getroottree(), xml_declaration=True, encoding="UTF-8", standalone=True
        )
        for name, root in changed.items()
    }
    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(content)) as old, zipfile.ZipFile(out, "w") as new:
        for entry in old.infolist():
            data = waiting.pop(entry.filename, None)
            new.writestr(entry, old.read(entry) if data is None else data, entry.compress_type)
        for name, data in waiting.items():
            new.writestr(zipfile.ZipInfo(name), data, zipfile.ZIP_DEFLATED)
    return out.getvalue()


def _free_name(package: Package, folder: str) -> str:
    names = {name.casefold() for name in package.names()}
    wanted = (
        posixpath.join(folder, f"comments{number or ''}.xml") for number in range(len(names) + 1)
    )
    return next(name for name in wanted if name.casefold() not in names)


def _is_strict(word: WordFile) -> bool:
    return namespace(word.root).startswith(_STRICT)


def _related(relations: Element, part: str, *, strict: bool) -> Element:
    taken = {attribute(relation, "Id") for relation in relations}
    free = next(
        f"rId{number}" for number in range(1, len(taken) + 2) if f"rId{number}" not in taken
    )
    etree.SubElement(
        relations,
        f"{{{namespace(relations)}}}Relationship",
        Id=free,
        Type=_STRICT_KIND if strict else _KIND,
        Target=f"/{part}",
    )
    return relations


def _typed(types: Element, part: str) -> Element:
    own = namespace(types)
    name = f"{{{own}}}Override" if own else "Override"
    etree.SubElement(types, name, PartName=f"/{part}", ContentType=_TYPE)
    return types
