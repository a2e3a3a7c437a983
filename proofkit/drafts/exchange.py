"""A ledger as one JSON file, and back: to another computer, or out of a syncing service's copy.

``export.schema.json`` beside this file documents the shape. A text that many drafts have stands once.
"""

from __future__ import annotations

import sqlite3
import tempfile
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

import msgspec

from proofkit.book import Role
from proofkit.drafts import rows_read
from proofkit.drafts.draft import (
    Draft,
    DraftIssue,
    DraftMeasures,
    DraftPage,
    DraftRuling,
    Versions,
)
from proofkit.drafts.ledger import add, drafts, is_known, newest, transaction
from proofkit.drafts.ledger_file import copied, writing
from proofkit.drafts.schema import TABLES_OF_DRAFTS
from proofkit.drafts.trouble import Damaged
from proofkit.problem import Unusable

_SQLITE = b"SQLite format 3\x00"


@dataclass(frozen=True, slots=True, kw_only=True)
class Imported:
    """How many drafts came in, and how many of those in the file were there already."""

    added: int
    known: int


@dataclass(frozen=True, slots=True, kw_only=True)
class _Page:
    number: int
    label: str
    spread: int | None
    role: Role
    words: int
    text: int


@dataclass(frozen=True, slots=True, kw_only=True)
class _Draft:
    number: int
    date: str
    file: str
    title: str
    complete: bool
    text_digest: str
    asked_digest: str
    measures: DraftMeasures
    versions: Versions
    rulings: tuple[DraftRuling, ...]
    pages: tuple[_Page, ...]
    issues: tuple[DraftIssue, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Ledger:
    schema_version: Literal[1]
    texts: list[str]
    drafts: list[_Draft]


def exported(file: Path) -> bytes:
    """All drafts of the ledger in ``file`` as JSON in UTF-8. Raises Damaged or Unusable as ``ledger`` does."""
    texts: dict[str, int] = {}
    written = [_written(draft, texts) for draft in drafts(file)]
    return msgspec.json.encode(_Ledger(schema_version=1, texts=list(texts), drafts=written)) + b"\n"


def import_into(file: Path, source: Path) -> Imported:
    """Bring the drafts in ``source``, an exported file or another ledger, into the ledger in ``file``.

    All drafts are put in the order of their dates and numbered anew; what the ledger has already stays
    once. It is done wholly or not at all. Raises Unusable where either can't be used.
    """
    coming = list(_drafts_in(source))
    with writing(file) as base, transaction(base):
        before = newest(base)
        _add_in_order(base, [draft for draft in coming if not is_known(base, draft)])
        added = newest(base) - before
    return Imported(added=added, known=len(coming) - added)


def _add_in_order(base: sqlite3.Connection, new: Iterable[Draft]) -> None:
    there = list(_all(base))
    in_order = sorted([*there, *new], key=lambda draft: draft.date)
    if in_order[: len(there)] == there:
        in_order = in_order[len(there) :]
    else:
        # What became of each issue depends on the drafts before: it is all told again.
        for table in TABLES_OF_DRAFTS:
            base.execute(f"DELETE FROM {table}")  # noqa: S608 - names of our own
    for draft in in_order:
        if not is_known(base, draft):  # it may have come twice
            add(base, draft)


def _all(base: sqlite3.Connection) -> Iterator[Draft]:
    for number in range(1, newest(base) + 1):
        draft = rows_read.read(base, number)
        if draft:
            yield draft


def _drafts_in(source: Path) -> Iterator[Draft]:
    try:
        content = source.read_bytes()
    except OSError as error:
        raise Unusable(
            f"{source} can’t be read. Check its name, and that you may open it."
        ) from error
    if content.startswith(_SQLITE):
        return iter(_drafts_of_copy(source))
    try:
        ledger = msgspec.json.decode(content, type=_Ledger)
        return iter([_read(draft, ledger.texts) for draft in ledger.drafts])
    except (msgspec.MsgspecError, UnicodeDecodeError, ValueError, IndexError) as error:
        raise Unusable(
            f"{source} is neither a file that proofkit drafts export wrote nor a ledger, so nothing was "
            "brought in from it. Export it again where it came from."
        ) from error


def _drafts_of_copy(source: Path) -> list[Draft]:
    """What is brought in is only read, whatever is the matter with it: it is a copy that is set right."""
    try:
        with tempfile.TemporaryDirectory(prefix="proofkit-") as folder:
            return list(drafts(copied(source, Path(folder))))
    except Damaged as damage:
        raise Unusable(
            f"{source} is damaged and can’t be read, so nothing was brought in from it. It was left as it is."
        ) from damage


def _written(draft: Draft, texts: dict[str, int]) -> _Draft:
    return _Draft(
        number=draft.number,
        date=draft.date.isoformat(timespec="seconds"),
        file=draft.file,
        title=draft.title,
        complete=draft.complete,
        text_digest=draft.text_digest,
        asked_digest=draft.asked_digest,
        measures=draft.measures,
        versions=draft.versions,
        rulings=draft.rulings,
        pages=tuple(
            _Page(
                number=page.number,
                label=page.label,
                spread=page.spread,
                role=page.role,
                words=page.words,
                text=texts.setdefault(page.text, len(texts)),
            )
            for page in draft.pages
        ),
        issues=draft.issues,
    )


def _read(draft: _Draft, texts: list[str]) -> Draft:
    return Draft(
        number=draft.number,
        date=rows_read.moment(draft.date),
        file=draft.file,
        title=draft.title,
        complete=draft.complete,
        text_digest=draft.text_digest,
        asked_digest=draft.asked_digest,
        measures=draft.measures,
        versions=draft.versions,
        rulings=draft.rulings,
        pages=tuple(
            DraftPage(
                number=page.number,
                label=page.label,
                spread=page.spread,
                role=page.role,
                words=page.words,
                text=_text(texts, page.text),
            )
            for page in draft.pages
        ),
        issues=draft.issues,
    )


def _text(texts: list[str], place: int) -> str:
    if place < 0:
        raise IndexError(place)
    return texts[place]
