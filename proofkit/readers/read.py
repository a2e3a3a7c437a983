"""From the author's file to a Book: the one way in.

The file is opened for reading only and closed again; each format's libraries are loaded when a file of
that format is read, and only then.
"""

from __future__ import annotations

import stat
from pathlib import Path
from typing import BinaryIO

from proofkit.book import Book, count_words
from proofkit.problem import Unusable
from proofkit.readers.assembly import book_of
from proofkit.readers.blocks import Source
from proofkit.readers.sniff import Format, is_zip, package_format, text_format

_HEAD = 1_000_000
_LARGEST_TEXT = 50_000_000


def read(path: Path) -> Book:
    """The manuscript in a file of any of the formats, told by its content.

    Raises ``Unusable`` with a sentence for the author when the file can't be read or holds no words.
    """
    try:
        _look_at(path)
        with path.open("rb") as file:
            source = _source(file, path)
    except PermissionError:
        raise Unusable(
            f"“{path.name}” may not be read by you; change its permissions, or copy it to a folder of "
            "your own and check it there."
        ) from None
    except (OSError, ValueError) as error:
        raise Unusable(f"“{path.name}” can't be opened: {_reason(error)}.") from None
    if not any(count_words(block.text) for block in source.blocks):
        raise Unusable(
            f"“{path.name}” holds no words to check; if its text is in pictures, type it out first."
        )
    return book_of(source, path)


def _look_at(path: Path) -> None:
    """Refuse what isn't an ordinary file with something in it."""
    try:
        status = path.stat()
    except FileNotFoundError:
        raise Unusable(
            f"There is no file “{path}”; look at the spelling of its name and at the folder it is in."
        ) from None
    if stat.S_ISDIR(status.st_mode):
        raise Unusable(f"“{path}” is a folder; name the manuscript inside it.")
    if not stat.S_ISREG(status.st_mode):
        raise Unusable(f"“{path}” is no ordinary file; name a manuscript that is saved on disk.")
    if status.st_size == 0:
        raise Unusable(f"“{path.name}” is empty; save your manuscript again and check that.")


def _source(file: BinaryIO, path: Path) -> Source:
    head = file.read(_HEAD)
    if is_zip(head):
        return _from_package(file, path)
    form = text_format(head, path)
    data = head + file.read(_LARGEST_TEXT)
    if len(data) > _LARGEST_TEXT:
        raise Unusable(
            f"“{path.name}” is longer than any children's book; check its chapters one by one."
        )
    if form is Format.RICH_TEXT:
        from proofkit.readers.rich_text import read_rich_text  # noqa: PLC0415 - loaded when needed

        return read_rich_text(data, path.name)
    if form is Format.MARKDOWN:
        from proofkit.readers.markdown import read_markdown  # noqa: PLC0415 - loaded when needed

        return read_markdown(data, path.name)
    from proofkit.readers.plain_text import read_plain_text  # noqa: PLC0415 - loaded when needed

    return read_plain_text(data, path.name)


def _from_package(file: BinaryIO, path: Path) -> Source:
    from proofkit.readers.package import Package  # noqa: PLC0415 - loaded when needed

    package = Package(file, path)
    form = package_format(package.names(), package.bytes_of("mimetype") or b"", path.name)
    if form is Format.WORD:
        from proofkit.readers.word import read_word  # noqa: PLC0415 - loaded when needed

        return read_word(package)
    from proofkit.readers.opendocument import read_opendocument  # noqa: PLC0415 - loaded when needed

    return read_opendocument(package)


def _reason(error: OSError | ValueError) -> str:
    reason = getattr(error, "strerror", None) or str(error)
    return reason[:1].lower() + reason[1:]
