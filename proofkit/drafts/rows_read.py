"""A draft from the rows of the ledger."""

from __future__ import annotations

import sqlite3
from contextlib import suppress
from datetime import datetime

import msgspec

from proofkit.book import Role
from proofkit.drafts.draft import (
    Draft,
    DraftIssue,
    DraftMeasures,
    DraftPage,
    DraftRuling,
    SpreadWords,
    Versions,
)
from proofkit.drafts.packing import places_in, unpacked
from proofkit.drafts.status import Ended, Status
from proofkit.issue import Tier


def read(base: sqlite3.Connection, number: int) -> Draft | None:
    """The draft of that number, as it was recorded; None where there is none."""
    row = base.execute(
        "SELECT checked_at, file, title, text_digest, asked_digest, complete, words, pages, spreads, errors, "
        "queries, let_stand, grade, rulings, versions "
        "FROM draft JOIN conditions ON conditions.id = draft.conditions WHERE number = ?",
        [number],
    ).fetchone()
    if row is None:
        return None
    date, file, title, text_digest, asked_digest, complete, *amounts, grade, rulings, versions = row
    words, pages, spreads, errors, queries, let_stand = amounts
    return Draft(
        number=number,
        date=moment(date),
        file=file,
        title=title,
        pages=_read_pages(base, number),
        issues=tuple(issue for issue, _, _ in read_issues(base, number)),
        measures=DraftMeasures(
            words=words,
            pages=pages,
            spreads=spreads,
            errors=errors,
            queries=queries,
            let_stand=let_stand,
            grade=grade,
            spread_words=_read_spreads(base, number),
        ),
        rulings=msgspec.json.decode(rulings, type=tuple[DraftRuling, ...]),
        versions=msgspec.json.decode(versions, type=Versions),
        text_digest=text_digest,
        asked_digest=asked_digest,
        complete=bool(complete),
    )


def moment(written: str) -> datetime:
    """A date as it is kept, with its time zone. Raises ValueError for one that is none."""
    date = datetime.fromisoformat(written)
    if date.tzinfo is None:
        raise ValueError(f"{written} has no time zone")
    return date


def read_issues(base: sqlite3.Connection, number: int) -> list[tuple[DraftIssue, Status, bool]]:
    """The issues of a draft, each with its status and whether the words there had been changed."""
    rows = base.execute(
        'SELECT key, "check", tier, quote, message, confidence, page, first, after, related, because, status, '
        "changed FROM issue JOIN matter ON matter.id = issue.matter WHERE draft = ? ORDER BY place",
        [number],
    )
    return [
        (
            DraftIssue(
                key=key,
                check=check,
                tier=Tier(tier),
                page=page,
                start=first,
                end=after,
                quote=quote,
                message=message,
                confidence=confidence,
                related=places_in(related),
                let_stand=status == Status.LET_STAND,
                because=because or "",
            ),
            Status(status),
            bool(changed),
        )
        for key, check, tier, quote, message, confidence, page, first, after, related, because, status, changed in rows
    ]


def read_past(base: sqlite3.Connection) -> tuple[Ended, ...]:
    """What ended in any draft so far and did not come back.

    What another proofkit wrote in a shape of its own is passed over: a slip may then be called new that is
    back again, and nothing worse.
    """
    past = []
    for (ended,) in base.execute("SELECT ended FROM past ORDER BY place"):
        with suppress(msgspec.DecodeError):
            past.append(msgspec.json.decode(ended, type=Ended))
    return tuple(past)


def _read_pages(base: sqlite3.Connection, number: int) -> tuple[DraftPage, ...]:
    rows = base.execute(
        "SELECT number, label, spread, role, words, content FROM page JOIN page_text "
        "ON page_text.id = page.text WHERE draft = ? ORDER BY number",
        [number],
    )
    return tuple(
        DraftPage(
            number=place,
            label=label,
            spread=spread,
            role=Role(role),
            words=words,
            text=unpacked(content),
        )
        for place, label, spread, role, words, content in rows
    )


def _read_spreads(base: sqlite3.Connection, number: int) -> tuple[SpreadWords, ...]:
    rows = base.execute("SELECT spread, words FROM spread WHERE draft = ? ORDER BY place", [number])
    return tuple(SpreadWords(spread=spread, words=words) for spread, words in rows)
