"""Make the example manuscripts, in five formats, from one marked source.

    python examples/make_examples.py

``the-borrowed-wind.source.md`` is the book with its planted slips marked ``›wrong|right|family‹``.
From it come the draft with the slips (here), the same book without them (in ``clean/``), and three
drafts on the way from one to the other, a book's folder with its ``proofkit.toml`` (in ``drafts/``). The
story, its people and its author are invented; the text is under the project's licence.
"""

from __future__ import annotations

import re
import zipfile
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path
from xml.sax.saxutils import escape

from docx import Document
from docx.enum.text import WD_BREAK

HERE = Path(__file__).parent
NAME = "the-borrowed-wind"
SOURCE = HERE / f"{NAME}.source.md"
_SLIP = re.compile(r"›(?P<wrong>[^›‹|]*)\|(?P<right>[^›‹|]*)\|(?P<family>[^›‹|]*)‹")
_SAME_TIME = (2026, 1, 1, 0, 0, 0)  # so that an unchanged source makes unchanged files


@dataclass(frozen=True, slots=True, kw_only=True)
class Slip:
    """A slip planted in the example: the words at fault, what they should read, the check's family."""

    wrong: str
    right: str
    family: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A paragraph of the manuscript: ``level`` 1 is the title, 2 a spread's label, 0 text."""

    level: int
    text: str


def slips() -> tuple[Slip, ...]:
    """Every planted slip, in the book's order."""
    return tuple(Slip(**match.groupdict()) for match in _SLIP.finditer(SOURCE.read_text("utf-8")))


def lines(version: str) -> tuple[Line, ...]:
    """The paragraphs of the book: ``version`` is "wrong" (with the slips) or "right"."""
    return _book(_SLIP.sub(lambda match: match[version], SOURCE.read_text("utf-8")))


def _book(text: str) -> tuple[Line, ...]:
    return tuple(_line(block) for block in text.strip().split("\n\n"))


def _line(block: str) -> Line:
    marks = re.match(r"#*", block)
    level = len(marks.group()) if marks else 0
    return Line(level=level, text=block[level:].strip())


def as_markdown(book: tuple[Line, ...]) -> bytes:
    """The book as Markdown."""
    blocks = (f"{'#' * line.level} {line.text}" if line.level else line.text for line in book)
    return ("\n\n".join(blocks) + "\n").encode()


def as_text(book: tuple[Line, ...]) -> bytes:
    """The book as plain text, the spreads' labels in square brackets."""
    blocks = (f"[{line.text}]" if line.level == 2 else line.text for line in book)
    return ("\n\n".join(blocks) + "\n").encode()


def as_word(book: tuple[Line, ...]) -> bytes:
    """The book as authors keep it in Word: title and headings by style, a page break before each."""
    document = Document()
    document.core_properties.title = book[0].text
    document.core_properties.author = ""
    for line in book:
        if line.level == 2:
            document.add_paragraph().add_run().add_break(WD_BREAK.PAGE)
        if line.level:
            document.add_heading(line.text, level=line.level - 1)
        else:
            document.add_paragraph(line.text)
    raw = BytesIO()
    document.save(raw)
    return _restamped(raw.getvalue())


def as_open_document(book: tuple[Line, ...]) -> bytes:
    """The book as OpenDocument text."""
    body = "".join(
        f'<text:h text:outline-level="{line.level}">{escape(line.text)}</text:h>'
        if line.level
        else f'<text:p text:style-name="Standard">{escape(line.text)}</text:p>'
        for line in book
    )
    office = "urn:oasis:names:tc:opendocument:xmlns"
    content = (
        f'<?xml version="1.0" encoding="UTF-8"?><office:document-content office:version="1.3"'
        f' xmlns:office="{office}:office:1.0" xmlns:text="{office}:text:1.0">'
        f"<office:body><office:text>{body}</office:text></office:body></office:document-content>"
    )
    media_type = "application/vnd.oasis.opendocument.text"
    manifest = (
        f'<?xml version="1.0" encoding="UTF-8"?><manifest:manifest manifest:version="1.3"'
        f' xmlns:manifest="{office}:manifest:1.0"><manifest:file-entry manifest:full-path="/"'
        f' manifest:media-type="{media_type}"/><manifest:file-entry'
        f' manifest:full-path="content.xml" manifest:media-type="text/xml"/></manifest:manifest>'
    )
    return _zipped(
        [
            ("mimetype", media_type.encode()),
            ("content.xml", content.encode()),
            ("META-INF/manifest.xml", manifest.encode()),
        ]
    )


def as_rich_text(book: tuple[Line, ...]) -> bytes:
    """The book as rich text, headings in bold, a page break before each spread."""
    parts = [r"{\rtf1\ansi\ansicpg1252\deff0{\fonttbl{\f0 Times New Roman;}}\f0\fs24"]
    for line in book:
        if line.level == 2:
            parts.append(r"\page")
        text = "".join(_rich_characters(line.text))
        parts.append(rf"{{\b {text}}}\par" if line.level else rf"{text}\par")
    return ("\n".join(parts) + "\n}").encode("ascii")


def _rich_characters(text: str) -> Iterator[str]:
    for character in text:
        if character in "\\{}":
            yield "\\" + character
        elif ord(character) < 128:
            yield character
        else:
            yield rf"\u{ord(character)}?"


def _zipped(members: list[tuple[str, bytes]]) -> bytes:
    raw = BytesIO()
    with zipfile.ZipFile(raw, "w") as archive:
        for name, content in members:
            # The media type stands first and unpacked, as OpenDocument asks.
            packing = zipfile.ZIP_STORED if name == "mimetype" else zipfile.ZIP_DEFLATED
            archive.writestr(zipfile.ZipInfo(name, _SAME_TIME), content, packing)
    return raw.getvalue()


def _restamped(archive: bytes) -> bytes:
    with zipfile.ZipFile(BytesIO(archive)) as packed:
        return _zipped([(member, packed.read(member)) for member in packed.namelist()])


FORMATS: dict[str, Callable[[tuple[Line, ...]], bytes]] = {
    ".docx": as_word,
    ".odt": as_open_document,
    ".rtf": as_rich_text,
    ".md": as_markdown,
    ".txt": as_text,
}


# What the author has mended by the second draft, and what was made anew in the second and the third.
_MENDED = ("spelling", "repetition", "spacing", "sentences", "english")
_IN_SECOND = ("said Mabel. She put on her boots", "wispered Mabel. She put on her boots")
_IN_THIRD = ("But one morning there", "But one mornign there")
OWN_FILE = 'title = "The Borrowed Wind"\nage-band = "picture"\nenglish = "british"\n'


def drafts() -> dict[str, bytes]:
    """The three drafts by the names that their author gave them: slips, fewer and a new one, one again."""
    text = SOURCE.read_text("utf-8")
    second = _SLIP.sub(lambda m: m["right" if m["family"] in _MENDED else "wrong"], text)
    third = _SLIP.sub(lambda m: m["right"], text)
    return {
        "wind.md": as_markdown(_book(_SLIP.sub(lambda m: m["wrong"], text))),
        "wind new.docx": as_word(_book(second.replace(*_IN_SECOND))),
        "wind new FINAL (2).docx": as_word(_book(third.replace(*_IN_THIRD))),
    }


def main() -> None:
    """Write both versions in every format, and the drafts."""
    (HERE / "drafts").mkdir(exist_ok=True)
    (HERE / "drafts" / "proofkit.toml").write_text(OWN_FILE, encoding="utf-8")
    for name, content in drafts().items():
        (HERE / "drafts" / name).write_bytes(content)
    (HERE / "clean").mkdir(exist_ok=True)
    for suffix, written in FORMATS.items():
        (HERE / f"{NAME}{suffix}").write_bytes(written(lines("wrong")))
        (HERE / "clean" / f"{NAME}{suffix}").write_bytes(written(lines("right")))


if __name__ == "__main__":
    main()
