"""What a paper of the pack holds, however it is set."""

from __future__ import annotations

from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True, kw_only=True)
class Columns:
    """A table; ``shares`` are its columns' parts of the width, and their sum is 1."""

    heads: tuple[str, ...]
    shares: tuple[float, ...]
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """A part of a paper: what it says, what it lists, and its table, in this order.

    ``to_tick`` gives each thing listed a box.
    """

    heading: str = ""
    says: tuple[str, ...] = ()
    lists: tuple[str, ...] = ()
    to_tick: bool = False
    table: Columns | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Paper:
    """One paper: ``name`` is what it is ("Words to confirm"), ``about`` its second line."""

    name: str
    about: str
    parts: tuple[Part, ...] = field(default=())
