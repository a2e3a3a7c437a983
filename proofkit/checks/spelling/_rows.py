"""One row for each place to mend, or one for a habit of the whole book."""

from __future__ import annotations

from collections.abc import Sequence

from proofkit.book import Span

_HABIT = 4


def rows(spans: Sequence[Span]) -> list[tuple[Span, tuple[Span, ...]]]:
    """The places that stand for themselves, each with the others that it stands for as well.

    A slip made two or three times is as many places to mend; made more often it is a habit, told once.
    """
    if len(spans) < _HABIT:
        return [(span, ()) for span in spans]
    return [(spans[0], tuple(spans[1:]))]
