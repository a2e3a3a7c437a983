"""What kind of file it is, by its first bytes and its parts; the name decides only among texts."""

from __future__ import annotations

import re
from enum import StrEnum
from pathlib import Path

from proofkit.problem import Unusable


class Format(StrEnum):
    """The formats that proofkit reads."""

    WORD = "Word"
    OPEN_DOCUMENT = "OpenDocument"
    RICH_TEXT = "Rich Text"
    MARKDOWN = "Markdown"
    PLAIN_TEXT = "plain text"


_SAVE = "save the manuscript as .docx, .odt, .rtf, .md or .txt and check that"
_OLD_WORD = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"
_OTHERS = (
    (b"%PDF", "a PDF"),
    (b"\x89PNG", "a picture"),
    (b"\xff\xd8\xff", "a picture"),
    (b"GIF8", "a picture"),
    (b"II*\x00", "a picture"),
    (b"MM\x00*", "a picture"),
    (b"8BPS", "a picture"),
    (b"RIFF", "a picture or a recording"),
    (b"\x1f\x8b", "a compressed archive"),
    (b"7z\xbc\xaf", "a compressed archive"),
    (b"Rar!", "a compressed archive"),
    (b"ID3", "a recording"),
    (b"\x7fELF", "a program"),
    (b"SQLite format 3", "a database"),
)
_MARKDOWN = re.compile(rb"^#{1,6}[ \t]*$|^#{1,6}[ \t]+\S", re.MULTILINE)
_MARKDOWN_NAMES = {".md", ".markdown", ".mdown", ".mkd"}
_TEXT_MARKS = (b"\xef\xbb\xbf", b"\xff\xfe", b"\xfe\xff")
_CONTROLS = bytes([*range(9), *range(14, 27), *range(28, 32)])


def is_zip(head: bytes) -> bool:
    """Whether a file is a zip package, as .docx and .odt are."""
    return head.startswith((b"PK\x03\x04", b"PK\x05\x06"))


def package_format(names: frozenset[str], mimetype: bytes, name: str) -> Format:
    """The format of a zip package by its parts and the type that it declares itself."""
    if "[Content_Types].xml" in names and any(part.startswith("word/") for part in names):
        return Format.WORD
    if mimetype.strip().startswith(b"application/vnd.oasis.opendocument.text"):
        return Format.OPEN_DOCUMENT
    if "Index/Document.iwa" in names:
        raise Unusable(
            f"“{name}” is a Pages document; in Pages, choose File › Export To › Word and check that."
        )
    raise Unusable(f"“{name}” is a package of something other than a manuscript; {_SAVE}.")


def text_format(head: bytes, path: Path) -> Format:
    """The format of a file that is no package and begins with ``head``.

    Raises ``Unusable`` for anything that is no manuscript.
    """
    start = head.lstrip(b"\xef\xbb\xbf \t\r\n")[:200].lower()
    if start.startswith(b"{\\rtf"):
        return Format.RICH_TEXT
    if head.startswith(_OLD_WORD):
        raise _old_word(head, path.name)
    for signature, what in _OTHERS:
        if head.startswith(signature):
            raise Unusable(f"“{path.name}” is {what}, not a manuscript; {_SAVE}.")
    if start.startswith((b"<!doctype html", b"<html", b"<?xml")):
        raise Unusable(f"“{path.name}” is a web page or an XML file, not a manuscript; {_SAVE}.")
    if not head.startswith(_TEXT_MARKS) and _is_binary(head):
        raise Unusable(f"“{path.name}” holds data that isn't text; {_SAVE}.")
    if path.suffix.lower() in _MARKDOWN_NAMES or _looks_like_markdown(head):
        return Format.MARKDOWN
    return Format.PLAIN_TEXT


def _old_word(head: bytes, name: str) -> Unusable:
    if "EncryptedPackage".encode("utf-16-le") in head:
        return Unusable(
            f"“{name}” is protected by a password; open it in Word, take the password off under "
            "File › Info › Protect Document, save it, and check it again."
        )
    if "WordDocument".encode("utf-16-le") in head:
        return Unusable(
            f"“{name}” is in the old Word format (.doc); open it in Word and save it as .docx."
        )
    return Unusable(f"“{name}” is an old Office file, not a manuscript; {_SAVE}.")


def _is_binary(head: bytes) -> bool:
    """Whether text in no encoding looks so: control bytes, zeros too unless every second is one."""
    controls = len(head) - len(head.translate(None, _CONTROLS))
    utf16 = max(head[0::2].count(0), head[1::2].count(0)) > len(head) * 0.4
    return not utf16 and controls * 100 > len(head)


def _looks_like_markdown(head: bytes) -> bool:
    """Two empty headings, or two headings of one kind of any text."""
    return len(_MARKDOWN.findall(head)) >= 2
