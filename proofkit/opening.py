"""How a manuscript is opened, and by what it is known again.

A file that has not changed in a single byte is not read anew, and what was found out about a book is
kept under a digest of the book, of what was asked, and of proofkit's own edition.
"""

from __future__ import annotations

import hashlib
from contextlib import suppress
from functools import cache
from pathlib import Path

import msgspec

from proofkit.book import Book
from proofkit.engines.memory import Memory
from proofkit.problem import Unusable
from proofkit.readers.language import looks_english
from proofkit.readers.read import read
from proofkit.words.data import wordlist

_BOOKS = "books"


def read_once(path: Path, memory: Memory) -> Book:
    """The manuscript as read: from memory, if the file has not changed in a single byte.

    Raises Unusable if it can't be read, or is not in English.
    """
    book = _remembered(path, memory)
    if not looks_english(book):
        raise Unusable(
            f"“{path}” doesn’t seem to be in English, and proofkit knows no other language."
        )
    return book


def digest(*matter: object) -> bytes:
    """What tells this matter, and this edition of proofkit, from any other."""
    return hashlib.sha256(msgspec.msgpack.encode((_edition(), *matter))).digest()


def _remembered(path: Path, memory: Memory) -> Book:
    content = _content(path)
    if content is None:
        return read(path)  # which says what is the matter
    key = digest(str(path), content)
    kept = memory.recall(_BOOKS, key)
    with suppress(msgspec.DecodeError):
        if kept:
            return msgspec.msgpack.decode(kept, type=Book)
    book = read(path)
    memory.remember(_BOOKS, key, msgspec.msgpack.encode(book))
    return book


def _content(path: Path) -> bytes | None:
    """What tells a file's content from any other; None where it is no ordinary file to be opened."""
    try:
        # A pipe or a device would be waited for, or never end.
        if path.is_file():
            with path.open("rb") as file:
                return hashlib.file_digest(file, "sha256").digest()
    except (OSError, ValueError):
        pass
    return None


@cache
def _edition() -> list[tuple[str, int, int]]:
    """Which proofkit this is, to the file: with a changed check or word list all is asked again."""
    package = Path(__file__).parent
    files = (*package.rglob("*.py"), *package.rglob("*.toml"), *wordlist(".").glob("*.t*"))
    return sorted((str(f), f.stat().st_size, f.stat().st_mtime_ns) for f in files)
