"""The characters near a place: rules look a few words around, in pages that may be as long as novels."""

from __future__ import annotations

_NEAR = 300  # characters: more than the longest reach of any rule that looks around a mark


def before(text: str, at: int, *, start: int = 0) -> str:
    """The characters just before ``at``, none of them before ``start``."""
    return text[max(start, at - _NEAR, 0) : at]


def after(text: str, at: int, *, end: int | None = None) -> str:
    """The characters from ``at`` on, none of them from ``end`` on."""
    stop = at + _NEAR if end is None else min(end, at + _NEAR)
    return text[at:stop]
