"""The drafts of a book as a page for the browser: how it got cleaner, draft after draft. It needs no script."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path

from proofkit.drafts.course import Step
from proofkit.drafts.fresh_eyes import FOUND_RESTED, FOUND_SOON
from proofkit.reports.drafts import setting
from proofkit.reports.drafts.staves import (
    MOST_DRAWN,
    Open,
    SpreadStave,
    families_in,
    open_in,
    spreads_in,
)
from proofkit.reports.html.charts import HEIGHT, VIEW_BOX, WIDTH
from proofkit.reports.html.sealed import sealed_page
from proofkit.reports.phrases import counted

_MOST_FIGURES = 5  # columns of figures beside a drawing
_LEFT, _TOP = map(int, VIEW_BOX.split()[:2])


def as_html(steps: Sequence[Step], hiding: Sequence[str] = ()) -> str:
    """The whole page of at least one draft; ``hiding`` says where slips hide in the newest."""
    drafts = [step.draft for step in steps]
    drawn = steps[-MOST_DRAWN:]
    open_, spreads = open_in(drawn), spreads_in(steps)
    heads, rows = _filled([setting.HEADS, *setting.rows(drafts)])
    *remarks, progress = setting.remarks(drafts)
    return sealed_page(
        Path(__file__).parent,
        "\n".join(_rules(open_, spreads)),
        title=setting.title(drafts),
        about=setting.about(drafts),
        drafts=drafts,
        # What is left is told above it already.
        progress=""
        if drafts[-1].complete and (drafts[-1].errors or drafts[-1].queries)
        else progress,
        towards=tuple(_towards(steps)),
        remarks=remarks,
        heads=heads,
        numbers=setting.NUMBERS,
        rows=rows,
        open=open_,
        drawn=[step.draft.number for step in drawn],
        held_back=len(steps) - len(drawn),
        families=families_in(drawn),
        figures_of=_figures(len(drawn)),
        spreads=spreads,
        hiding=hiding,
        soon=FOUND_SOON,
        rested=FOUND_RESTED,
        view_box=VIEW_BOX,
        left=_LEFT,
        ground=_TOP + HEIGHT,
        width=WIDTH,
        counted=counted,
    )


def _towards(steps: Sequence[Step]) -> Iterator[tuple[str, str]]:
    """What a book needs before it is handed over, and how far it has come."""
    first, newest = steps[0].draft, steps[-1].draft
    alone = len(steps) == 1
    yield "errors to mend", _of(newest.errors, first.errors, alone=alone)
    yield "queries to think about", _of(newest.queries, first.queries, alone=alone)
    if not alone:
        fresh = newest.of_errors.new + newest.of_errors.back_again
        quiet = setting.drafts_without_new_error([step.draft for step in steps])
        yield (
            "drafts since a new error",
            str(quiet) if quiet else f"none: draft {newest.number} has {fresh}",
        )


def _of(now: int, first: int, *, alone: bool) -> str:
    told = f"{now:,}" if now else "none"
    if alone:
        return told
    return f"{told}{', as' if now == first else f'; {first:,}' if first else '; none'} in the first draft"


def _filled(table: Sequence[Sequence[str]]) -> tuple[Sequence[str], Sequence[Sequence[str]]]:
    """The headings and the rows of a table, without columns that have nothing in them."""
    columns = [column for column in zip(*table, strict=True) if any(column[1:])]
    heads, *rows = zip(*columns, strict=True)
    return heads, rows


def _figures(drafts: int) -> tuple[int, ...]:
    """Of which drafts, by their places, figures stand beside a drawing: all, or the first and the newest."""
    if drafts <= _MOST_FIGURES:
        return tuple(range(drafts))
    return (0, *range(drafts - _MOST_FIGURES + 1, drafts))


def _rules(open_: Open, spreads: SpreadStave | None) -> Iterator[str]:
    """How high each stave is, and each figure over its column."""
    yield f":root{{--errors-height:{open_.errors.height}rem;--queries-height:{open_.queries.height}rem}}"
    for at, column in enumerate(open_.columns, 1):
        yield f".errors-{at}{{bottom:{column.errors_at}%}}.queries-{at}{{bottom:{column.queries_at}%}}"
    for at, spread in enumerate(spreads.columns if spreads else (), 1):
        yield f".words-{at}{{bottom:{spread.at}%}}"
