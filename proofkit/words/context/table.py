"""Small numbers by name, many of them, in little space and without reading them all.

A name is hashed to 32 bits. The upper 16 choose a shelf; on the shelf the lower 16, sorted, are looked
for by halving. Names themselves are not kept, so a name that isn't there is taken for another now and
then: about one look in two thousand at two million names. Whoever sums many numbers can bear that.

The file: eight bytes ``proofwc1``; where each shelf begins and the last ends (65,537 times 32 bits);
the lower halves (16 bits each); the numbers (8 bits each). All little-endian.
"""

from __future__ import annotations

import mmap
import sys
from array import array
from bisect import bisect_left
from collections.abc import Sequence
from pathlib import Path
from typing import Literal, cast
from zlib import crc32

MAGIC = b"proofwc1"
SHELVES = 1 << 16


class Table:
    """A file of numbers, mapped into memory: only what is looked at is read."""

    __slots__ = ("_begins", "_lower", "_numbers")

    def __init__(self, path: Path) -> None:
        with path.open("rb") as file:
            data = memoryview(mmap.mmap(file.fileno(), 0, access=mmap.ACCESS_READ))
        if data[: len(MAGIC)] != MAGIC:
            raise ValueError(f"{path} is not a table of numbers by name")
        lower = len(MAGIC) + 4 * (SHELVES + 1)
        begins = _numbers(data[len(MAGIC) : lower], "I")
        numbers = lower + 2 * begins[SHELVES]
        self._begins = begins
        self._lower = _numbers(data[lower:numbers], "H")
        self._numbers = data[numbers:]

    def get(self, name: str) -> int:
        """The number of that name, 1 to 255, or 0 where there is none."""
        key = name_key(name)
        shelf = key >> 16
        lower = key & 0xFFFF
        end = self._begins[shelf + 1]
        at = bisect_left(self._lower, lower, self._begins[shelf], end)
        return self._numbers[at] if at < end and self._lower[at] == lower else 0


def name_key(name: str) -> int:
    """The 32 bits that stand for a name."""
    return crc32(name.encode())


def _numbers(data: memoryview, kind: Literal["I", "H"]) -> Sequence[int]:
    if sys.byteorder == "little":
        return cast("Sequence[int]", data.cast(kind))
    turned: array[int] = array(kind, data.tobytes())
    turned.byteswap()
    return turned
