"""How often, in words."""

from __future__ import annotations


def times(count: int) -> str:
    """Once, 2 times, 3 times."""
    return "once" if count == 1 else f"{count} times"
