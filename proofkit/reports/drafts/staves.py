"""What the page of drafts draws: what was open in each draft, of which families, and the words on each spread.

Everything drawn carries its figures as type, so that nothing is told by the drawing alone.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from proofkit.drafts.course import Step
from proofkit.drafts.summary import Summary
from proofkit.reports.drafts.setting import day
from proofkit.reports.html.charts import Bar, level, share, stacked

MOST_DRAWN = 40  # drafts; of more the newest are drawn, and all are in the table
_HEIGHT = 11.0  # rem for errors and queries together, without what stands above the bars
_TALLEST = 1.25  # rem for one issue at most: a book with two of them is no tower
_ABOVE = 1.4  # rem for the figure above the tallest bar
_HEADROOM = 1.25
_NAMES = {
    "address": "commas of address",
    "english": "British or American",
    "marks": "apostrophes and marks",
    "reading": "reading age",
    "words": "wrong words",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Stave:
    """Bars for errors or for queries; the upper part of each is what that draft brought anew.

    ``height`` is in rem: errors and queries are drawn to one scale. ``top`` is the value at its top.
    """

    bars: tuple[Bar, ...]
    height: float
    top: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """A draft under its bars: its figures, and how high they stand, in hundredths of the stave.

    ``fresh_errors`` and ``fresh_queries`` are those that are new or back again, ``fixed`` is of both;
    all are 0 for a first draft.
    """

    number: int
    day: str
    errors: int
    errors_at: float
    fresh_errors: int
    queries: int
    queries_at: float
    fresh_queries: int
    fixed: int

    @property
    def fresh(self) -> int:
        """What that draft brought anew, errors and queries together."""
        return self.fresh_errors + self.fresh_queries


@dataclass(frozen=True, slots=True, kw_only=True)
class Open:
    """What was open in each draft."""

    errors: Stave
    queries: Stave
    columns: tuple[Column, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class FamilyRow:
    """The open issues of one family in each draft drawn; ``bars`` are to the same scale in all rows."""

    name: str
    issues: tuple[int, ...]
    bars: tuple[Bar, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SpreadColumn:
    """A spread: its words now and before; None where the draft had no such spread."""

    spread: int
    now: int | None
    was: int | None
    at: float


@dataclass(frozen=True, slots=True, kw_only=True)
class SpreadStave:
    """Words on each spread now, as bars, and at which y a stroke marks what it was before.

    ``number`` is the draft before: the newest one in which the words on some spread were others; None
    where there is none.
    """

    bars: tuple[Bar, ...]
    strokes: tuple[float | None, ...]
    columns: tuple[SpreadColumn, ...]
    number: int | None


def open_in(steps: Sequence[Step]) -> Open:
    """What was open in each of the drafts, the first of which may have others before it."""
    drafts = [step.draft for step in steps]
    most_errors = max(draft.errors for draft in drafts)
    most_queries = max(draft.queries for draft in drafts)
    unit = min(_TALLEST, _HEIGHT / max(most_errors + most_queries, 1))
    errors = _stave([(draft.errors, _fresh(draft)[0]) for draft in drafts], unit)
    queries = _stave([(draft.queries, _fresh(draft)[1]) for draft in drafts], unit)
    return Open(
        errors=errors,
        queries=queries,
        columns=tuple(_column(draft, errors, queries) for draft in drafts),
    )


def _fresh(draft: Summary) -> tuple[int, int]:
    """The errors and the queries that a draft brought anew; none for a first one."""
    if draft.against is None:
        return 0, 0
    errors = draft.of_errors.new + draft.of_errors.back_again
    return errors, draft.counts.new + draft.counts.back_again - errors


def _stave(values: Sequence[tuple[int, int]], unit: float) -> Stave:
    height = max(value for value, _ in values) * unit + _ABOVE
    top = height / unit
    older, fresh = [value - new for value, new in values], [new for _, new in values]
    return Stave(bars=stacked(older, fresh, top), height=round(height, 3), top=top)


def _column(draft: Summary, errors: Stave, queries: Stave) -> Column:
    fresh_errors, fresh_queries = _fresh(draft)
    return Column(
        number=draft.number,
        day=day(draft.date),
        errors=draft.errors,
        errors_at=share(draft.errors, 0, errors.top),
        fresh_errors=fresh_errors,
        queries=draft.queries,
        queries_at=share(draft.queries, 0, queries.top),
        fresh_queries=fresh_queries,
        fixed=0 if draft.against is None else draft.counts.fixed,
    )


def families_in(steps: Sequence[Step]) -> tuple[FamilyRow, ...]:
    """A row for each family: first those that most is left of, then those that there was most of."""
    names = {name for step in steps for name in step.families}
    found = {name: tuple(step.families.get(name, 0) for step in steps) for name in names}
    top = max((max(issues) for issues in found.values()), default=1)
    order = sorted(found, key=lambda name: (-found[name][-1], -max(found[name]), name))
    return tuple(
        FamilyRow(
            name=_NAMES.get(name, name),
            issues=found[name],
            bars=stacked(found[name], [0] * len(steps), top),
        )
        for name in order
    )


def spreads_in(steps: Sequence[Step]) -> SpreadStave | None:
    """The words on each spread of the newest draft, beside those before; None where it has no spreads."""
    newest = steps[-1]
    if not newest.spread_words:
        return None
    before = _last_other(steps)
    now = {each.spread: each.words for each in newest.spread_words}
    was = {each.spread: each.words for each in before.spread_words} if before else {}
    top = _HEADROOM * max(*now.values(), *was.values(), 1)
    spreads = sorted(now.keys() | was.keys())
    changed = (
        was.get(spread) if was.get(spread) != now.get(spread) else None for spread in spreads
    )
    return SpreadStave(
        bars=stacked([now.get(spread, 0) for spread in spreads], [0] * len(spreads), top),
        strokes=tuple(None if words is None else level(words, top) for words in changed),
        columns=tuple(
            SpreadColumn(
                spread=spread,
                now=now.get(spread),
                was=was.get(spread),
                # A figure stands above what it tells of, the bar and the stroke.
                at=share(max(now.get(spread, 0), was.get(spread, 0)), 0, top),
            )
            for spread in spreads
        ),
        number=before.draft.number if before else None,
    )


def _last_other(steps: Sequence[Step]) -> Step | None:
    *others, newest = steps
    return next(
        (
            step
            for step in reversed(others)
            if step.spread_words and step.spread_words != newest.spread_words
        ),
        None,
    )
