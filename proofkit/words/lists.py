"""Short word lists that stand in the code, written as running text."""

from __future__ import annotations


def word_set(text: str) -> frozenset[str]:
    """The words of a text that is parted by white space."""
    return frozenset(text.split())
