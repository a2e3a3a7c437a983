"""Zip packages (.docx, .odt) and the XML in them, opened with care.

A manuscript is small. A package that claims to unpack to far more than it weighs, or a part that
does so in fact, is refused before it fills the memory; XML that declares a document type or entities
is refused, since no word processor writes it and it can be made to swell or to read other files.
"""

from __future__ import annotations

import zipfile
import zlib
from pathlib import Path
from typing import BinaryIO

from lxml import etree

from proofkit.problem import Unusable

# A novel of 5 MB makes some 40 MB of XML; pictures hardly shrink in a zip, so only what shrinks counts.
_LARGEST_PART = 64_000_000
_LARGEST_WHOLE = 200_000_000
_MOST_SHRUNK = 20
_MOST_PARTS = 10_000


class Package:
    """An open zip package. ``name`` is the file's name, for sentences."""

    def __init__(self, file: BinaryIO, path: Path) -> None:
        self.name = path.name
        try:
            self._zip = zipfile.ZipFile(file)
        except (zipfile.BadZipFile, OSError, ValueError, NotImplementedError):
            raise Unusable(
                f"“{self.name}” is damaged or was cut short; take your last good copy of it, or open "
                "it in your word processor and save it anew."
            ) from None
        self._refuse_bombs()

    def _refuse_bombs(self) -> None:
        parts = self._zip.infolist()
        whole = sum(part.file_size for part in parts)
        packed = sum(part.compress_size for part in parts)
        if len(parts) > _MOST_PARTS or (
            whole > _LARGEST_WHOLE and whole > _MOST_SHRUNK * max(1, packed)
        ):
            raise self._too_large()

    def _too_large(self) -> Unusable:
        return Unusable(
            f"“{self.name}” unpacks to far more than a manuscript can hold, so it was not opened; copy "
            "your text into a new document and check that."
        )

    def names(self) -> frozenset[str]:
        """The names of the package's parts."""
        return frozenset(self._zip.namelist())

    def bytes_of(self, part: str) -> bytes | None:
        """A part's bytes, or None where there is no such part. Raises ``Unusable`` if it is spoilt."""
        try:
            info = self._zip.getinfo(part)
            if info.flag_bits & 1:
                raise Unusable(
                    f"“{self.name}” is protected by a password; save it without one and try again."
                )
            with self._zip.open(info) as stream:
                data = stream.read(_LARGEST_PART + 1)
        except KeyError:
            return None
        except (zipfile.BadZipFile, zlib.error, OSError, EOFError, NotImplementedError, ValueError):
            raise self._damaged() from None
        if len(data) > _LARGEST_PART:
            raise self._too_large()
        return data

    def xml(self, part: str) -> etree._Element | None:
        """The root of an XML part, or None where there is no such part."""
        data = self.bytes_of(part)
        return None if data is None else parsed(data, self.name)

    def _damaged(self) -> Unusable:
        return Unusable(
            f"“{self.name}” is damaged inside; open it in your word processor, let it repair the file, "
            "and save it under a new name."
        )


def parsed(data: bytes, name: str) -> etree._Element:
    """The root element of some XML, without comments. Raises ``Unusable`` for bad or unsafe XML."""
    parser = etree.XMLParser(
        resolve_entities=False,
        no_network=True,
        load_dtd=False,
        huge_tree=False,
        remove_comments=True,
        remove_pis=True,
    )
    try:
        root = etree.fromstring(data, parser)
    except (etree.XMLSyntaxError, ValueError):
        if b"<!DOCTYPE" in data[:4000] or b"<!ENTITY" in data:
            raise _unsafe(name) from None
        raise Unusable(
            f"“{name}” is damaged inside; open it in your word processor, let it repair the file, and "
            "save it under a new name."
        ) from None
    info = root.getroottree().docinfo
    if info.doctype or info.internalDTD is not None:
        raise _unsafe(name)
    return root


def _unsafe(name: str) -> Unusable:
    return Unusable(
        f"“{name}” holds instructions (XML entities) that no word processor writes, so it was not "
        "read; copy your text into a new document and check that."
    )
