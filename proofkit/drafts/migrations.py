"""Bringing a ledger up to date: one small step after another, each wholly done or not at all."""

from __future__ import annotations

import sqlite3
from collections.abc import Sequence
from contextlib import closing, suppress
from pathlib import Path

from proofkit.drafts.schema import APPLICATION
from proofkit.drafts.trouble import free_name, made_by_another, made_by_newer
from proofkit.problem import Unusable


def bring_up_to_date(base: sqlite3.Connection, file: Path, migrations: Sequence[str]) -> None:
    """Take every step that the ledger has not seen; a copy of it is kept first.

    Raises Unusable, with the ledger as it was, for one of a newer proofkit or of another program.
    """
    layout: int = base.execute("PRAGMA user_version").fetchone()[0]
    if layout > len(migrations):
        raise Unusable(made_by_newer(file))
    if layout == 0:
        if base.execute("SELECT count(*) FROM sqlite_schema").fetchone()[0]:
            raise Unusable(made_by_another(file))
        # A new ledger is made in one go, so that none is ever found half made.
        _take(base, "".join(migrations), len(migrations))
    elif layout < len(migrations):
        _keep_copy(base, file, layout)
        for number, step in enumerate(migrations[layout:], layout + 1):
            _take(base, step, number)


def _take(base: sqlite3.Connection, step: str, layout: int) -> None:
    base.execute("BEGIN IMMEDIATE")
    try:
        for statement in _statements(step):
            base.execute(statement)
        base.execute(f"PRAGMA application_id = {APPLICATION}")
        base.execute(f"PRAGMA user_version = {layout}")
        base.execute("COMMIT")
    except BaseException:
        with suppress(sqlite3.Error):
            base.execute("ROLLBACK")
        raise


def _statements(step: str) -> list[str]:
    """The step's statements, one by one: ``executescript`` would end the transaction."""
    statements, so_far = [], ""
    for line in step.splitlines(keepends=True):
        so_far += line
        if sqlite3.complete_statement(so_far):
            statements.append(so_far)
            so_far = ""
    return statements


def _keep_copy(base: sqlite3.Connection, file: Path, layout: int) -> None:
    """A whole copy of the ledger as it was, beside it, before anything in it is changed."""
    kept = free_name(file, f"backup of layout {layout}")
    part = kept.with_name(f"{kept.name}.part")
    try:
        part.unlink(missing_ok=True)
        with closing(sqlite3.connect(part)) as copy:
            base.backup(copy)
        part.replace(kept)
    finally:
        with suppress(OSError):
            part.unlink(missing_ok=True)
