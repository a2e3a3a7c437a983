"""A ruling as it is written into ``proofkit.toml``."""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from dataclasses import dataclass

import tomlkit

from proofkit.book import Book
from proofkit.issue import Issue
from proofkit.rulings.passage import written
from proofkit.rulings.ruling import TABLE

_MOST_ALSO = 3  # other places that are written down: enough to know the matter by when one is gone


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """What one ``[[stet]]`` table says; an empty text, and ``equals`` 1, are not written."""

    date: datetime.date
    check: str
    key: str = ""
    line: str = ""
    also: tuple[str, ...] = ()
    equals: int = 1
    page: str = ""
    because: str = ""


def entry_for(
    book: Book,
    issue: Issue,
    *,
    equals: int,
    page: str,
    because: str,
    date: datetime.date,
) -> Entry:
    """The entry that lets one issue stand. ``page`` is what the author calls its page."""
    texts = [each.text for each in book.pages]
    return Entry(
        date=date,
        check=issue.check,
        key=issue.key,
        line=written(texts, issue.span),
        also=tuple(written(texts, span) for span in issue.related[:_MOST_ALSO]),
        equals=equals,
        page=page,
        because=because,
    )


def as_values(entry: Entry) -> Mapping[str, object]:
    """The entry's names and values, in the order in which they are written."""
    values: dict[str, object] = {
        "key": entry.key,
        "check": entry.check,
        "line": entry.line,
        "also": list(entry.also),
        "equals": entry.equals if entry.equals > 1 else 0,
        "page": entry.page,
        "because": entry.because,
        "date": entry.date,
    }
    return {name: value for name, value in values.items() if value}


def as_toml(entry: Entry) -> str:
    """The entry as a table of TOML, ending with a line end."""
    table = tomlkit.table()
    for name, value in as_values(entry).items():
        item = tomlkit.item(value)
        if isinstance(item, tomlkit.items.Array):
            item.multiline(multiline=True)
        table.add(name, item)
    return f"[[{TABLE}]]\n{table.as_string()}"
