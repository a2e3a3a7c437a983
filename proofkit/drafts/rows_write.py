"""A draft as rows of the ledger. Texts and sayings that many drafts share are kept once."""

from __future__ import annotations

import sqlite3
from collections.abc import Sequence

import msgspec

from proofkit.drafts.draft import Draft, DraftIssue
from proofkit.drafts.packing import digest_of, in_utf8, listed, packed
from proofkit.drafts.status import Comparison, Ended, Status
from proofkit.issue import Tier

_DRAFT = "INSERT INTO draft VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)"
_PAGE = "INSERT INTO page VALUES (?, ?, ?, ?, ?, ?, ?)"
_ISSUE = "INSERT INTO issue VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)"
_ENDING = "INSERT INTO ending VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)"


def write(base: sqlite3.Connection, draft: Draft, against: int | None, found: Comparison) -> None:
    """Add a numbered draft, and how it compares with the draft ``against`` and those before."""
    _write_draft(base, draft, against)
    texts = _kept_texts(base, [page.text for page in draft.pages])
    base.executemany(
        _PAGE,
        (
            (draft.number, p.number, texts[p.text], p.words, p.spread, str(p.role), p.label)
            for p in draft.pages
        ),
    )
    base.executemany(
        "INSERT INTO spread VALUES (?, ?, ?, ?)",
        (
            (draft.number, place, each.spread, each.words)
            for place, each in enumerate(draft.measures.spread_words, 1)
        ),
    )
    _write_issues(base, draft.number, found)
    _write_tally(base, draft.number, found)
    _write_past(base, found.past)


def rulings_of(draft: Draft) -> str:
    """The rulings in force for a draft, as they are kept."""
    return msgspec.json.encode(draft.rulings).decode()


def _write_draft(base: sqlite3.Connection, draft: Draft, against: int | None) -> None:
    rulings, versions = rulings_of(draft), msgspec.json.encode(draft.versions).decode()
    digest = digest_of(rulings, versions)
    base.execute(
        "INSERT OR IGNORE INTO conditions (digest, rulings, versions) VALUES (?, ?, ?)",
        [digest, rulings, versions],
    )
    (conditions,) = base.execute("SELECT id FROM conditions WHERE digest = ?", [digest]).fetchone()
    sums = draft.measures
    base.execute(
        _DRAFT,
        [
            draft.number,
            draft.date.isoformat(timespec="seconds"),
            in_utf8(draft.file),
            draft.title,
            draft.text_digest,
            draft.asked_digest,
            draft.complete,
            sums.words,
            sums.pages,
            sums.spreads,
            sums.errors,
            sums.queries,
            sums.let_stand,
            sums.grade,
            against,
            conditions,
        ],
    )


def _kept_texts(base: sqlite3.Connection, texts: Sequence[str]) -> dict[str, int]:
    """Where each text is kept, by the text; those that were not there yet are added."""
    kept = {}
    for text in texts:
        digest = digest_of(text)
        known = base.execute("SELECT id FROM page_text WHERE digest = ?", [digest]).fetchone()
        if known is None:
            added = base.execute(
                "INSERT INTO page_text (digest, content) VALUES (?, ?)", [digest, packed(text)]
            )
            kept[text] = added.lastrowid or 0
        else:
            kept[text] = known[0]
    return kept


def _write_issues(base: sqlite3.Connection, number: int, found: Comparison) -> None:
    base.executemany(
        _ISSUE,
        [
            (
                number,
                place,
                _matter(base, each.issue),
                each.issue.page,
                each.issue.start,
                each.issue.end,
                str(each.status),
                each.from_change,
                listed(each.issue.related),
                each.issue.because or None,
            )
            for place, each in enumerate(found.issues, 1)
        ],
    )
    base.executemany(
        _ENDING,
        [
            (
                number,
                place,
                _matter(base, each.issue),
                each.draft,
                each.issue.page,
                each.issue.start,
                each.issue.end,
                str(each.status),
                each.issue.let_stand,
            )
            for place, each in enumerate(found.ended, 1)
        ],
    )


def _matter(base: sqlite3.Connection, issue: DraftIssue) -> int:
    said = (issue.key, issue.check, str(issue.tier), issue.quote, issue.message, issue.confidence)
    digest = digest_of(*map(str, said))
    known = base.execute("SELECT id FROM matter WHERE digest = ?", [digest]).fetchone()
    if known:
        return int(known[0])
    added = base.execute(
        'INSERT INTO matter (digest, key, "check", tier, quote, message, confidence) VALUES (?, ?, ?, ?, ?, ?, ?)',
        [digest, *said],
    )
    return added.lastrowid or 0


def _write_tally(base: sqlite3.Connection, number: int, found: Comparison) -> None:
    rows = [
        (number, str(tier), str(status), issues)
        for tier in Tier
        for status in Status
        if (issues := getattr(found.counts(tier), status.name.lower()))
    ]
    base.executemany("INSERT INTO tally VALUES (?, ?, ?, ?)", rows)


def _write_past(base: sqlite3.Connection, past: Sequence[Ended]) -> None:
    """Bring the past up to the newest draft; what stays as it was is not written again."""
    before = dict(base.execute("SELECT place, ended FROM past"))
    now = {place: msgspec.json.encode(ended).decode() for place, ended in enumerate(past, 1)}
    base.execute("DELETE FROM past WHERE place > ?", [len(now)])
    base.executemany(
        "INSERT OR REPLACE INTO past VALUES (?, ?)",
        [(place, ended) for place, ended in now.items() if before.get(place) != ended],
    )
