"""``proofkit explain``: what a check finds, why it matters, when to let it stand."""

from __future__ import annotations

import difflib
import shutil
import textwrap
from collections.abc import Iterable, Sequence
from itertools import groupby
from typing import TYPE_CHECKING, Annotated

import typer

from proofkit.cli.guard import Exit, guarded
from proofkit.problem import Unusable

if TYPE_CHECKING:
    from proofkit.checks.check import Check

_WIDEST = 80  # characters to a line of running text


@guarded
def explain(
    check: Annotated[str | None, typer.Argument(metavar="CHECK", hidden=True)] = None,
) -> Exit:
    """Tell what a check finds, why a reader minds, and when to let it stand.

    CHECK is its name, as a report gives it, or a family of checks; without one, all are listed.
    """
    # Only now: help must not wait for the checks.
    from proofkit.checks.registry import all_checks, check_named, check_names  # noqa: PLC0415

    asked = (check or "").strip().lower().rstrip("/")
    listed = [known for known in all_checks() if asked in ("", known.family)]
    if listed:
        print(_listed(listed))
        return Exit.CLEAN
    named = check_named(asked)
    if named is None:
        raise Unusable(unknown_check(asked, check_names()))
    print(_page(named))
    return Exit.CLEAN


def _page(check: Check) -> str:
    from proofkit.cli.handbook import sections, set_out, summary  # noqa: PLC0415 - as above

    head = textwrap.fill(f"{check.name}: {summary(check.handbook)}", _width())
    parts = [f"{s.heading}\n{set_out(s, _width())}" for s in sections(check.handbook)]
    return "\n\n".join([head, *parts])


def _listed(checks: Sequence[Check]) -> str:
    """Every check under its family, with its summary."""
    in_order = sorted(checks, key=lambda check: check.name)
    families = [
        "\n".join([family, *_lines(members)])
        for family, members in groupby(in_order, key=lambda check: check.family)
    ]
    return "\n\n".join([*families, "To read more about one: proofkit explain CHECK"])


def _lines(checks: Iterable[Check]) -> Iterable[str]:
    from proofkit.cli.handbook import summary  # noqa: PLC0415 - as above

    for check in checks:
        yield f"  {check.name}"
        yield textwrap.fill(
            summary(check.handbook), _width(), initial_indent="    ", subsequent_indent="    "
        )


def unknown_check(asked: str, names: Sequence[str]) -> str:
    """What to say where there is no check of that name: which ones are meant, perhaps."""
    near = difflib.get_close_matches(asked, names, n=3, cutoff=0.5)
    near = near or [name for name in names if asked in name][:3]
    if near:
        return f"There is no check called “{asked}”. Did you mean {' or '.join(near)}?"
    return f"There is no check called “{asked}”. To see all of them: proofkit explain"


def _width() -> int:
    return min(_WIDEST, shutil.get_terminal_size().columns)
