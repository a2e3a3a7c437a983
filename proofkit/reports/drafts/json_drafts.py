"""The drafts as JSON, for programs. ``drafts.schema.json`` beside this file documents its shape."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import msgspec

from proofkit.drafts.status import Counts
from proofkit.drafts.summary import Summary, days_between
from proofkit.reports.drafts.setting import drafts_without_new_error, title


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """A draft as it is written; ``drafts.schema.json`` says what each value is."""

    number: int
    date: str
    days_since_last: int | None
    file: str
    words: int
    pages: int
    spreads: int
    errors: int
    queries: int
    per_thousand: float
    new: int
    fixed: int
    still_there: int
    back_again: int
    gone_with_text: int
    no_longer_raised: int
    let_stand: int
    grade: float | None
    heaviest_spread: int | None
    heaviest_words: int | None
    compared_with: int | None
    complete: bool
    error_changes: Counts


@dataclass(frozen=True, slots=True, kw_only=True)
class _Drafts:
    schema_version: int = 1
    title: str
    drafts_without_new_error: int
    drafts: tuple[Row, ...]


def as_json(drafts: Sequence[Summary]) -> bytes:
    """A JSON object in UTF-8, indented, with a line end."""
    befores = (None, *drafts)
    value = _Drafts(
        title=title(drafts),
        drafts_without_new_error=drafts_without_new_error(drafts),
        drafts=tuple(row_of(draft, before) for draft, before in zip(drafts, befores, strict=False)),
    )
    return msgspec.json.format(msgspec.json.encode(value), indent=2) + b"\n"


def row_of(draft: Summary, before: Summary | None) -> Row:
    """The row of a draft, and of the one ``before`` it in the ledger."""
    counts = draft.counts
    return Row(
        number=draft.number,
        date=draft.date.isoformat(timespec="seconds"),
        days_since_last=days_between(before.date, draft.date) if before else None,
        file=draft.file,
        words=draft.words,
        pages=draft.pages,
        spreads=draft.spreads,
        errors=draft.errors,
        queries=draft.queries,
        per_thousand=round(draft.per_thousand, 2),
        new=counts.new,
        fixed=counts.fixed,
        still_there=counts.still_there,
        back_again=counts.back_again,
        gone_with_text=counts.gone_with_text,
        no_longer_raised=counts.no_longer_raised,
        let_stand=counts.let_stand,
        grade=None if draft.grade is None else round(draft.grade, 2),
        heaviest_spread=draft.heaviest.spread if draft.heaviest else None,
        heaviest_words=draft.heaviest.words if draft.heaviest else None,
        compared_with=draft.against,
        complete=draft.complete,
        error_changes=draft.of_errors,
    )
