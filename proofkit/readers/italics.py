"""Which characters of a paragraph are italic, from the reader's pieces to the page's offsets.

Between the two, a page mark may be taken off the paragraph's front, its lines joined or parted, its
ends trimmed. None of that adds or drops a letter in the middle, so the letters find their place again.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from proofkit.readers.characters import kept


@dataclass(frozen=True, slots=True, kw_only=True)
class Italics:
    """A paragraph's characters without white space, as its reader found them, and the italic ones' ranges."""

    letters: str = ""
    ranges: tuple[tuple[int, int], ...] = ()

    def within(self, text: str) -> tuple[tuple[int, int], ...]:
        """The ranges of ``text``, which is some or all of the paragraph, that are italic."""
        places = [at for at, character in enumerate(text) if not character.isspace()]
        first = self.letters.rfind("".join(text[at] for at in places)) if self.ranges else -1
        if first < 0:
            return ()
        moved = (
            (max(0, start - first), min(len(places), end - first)) for start, end in self.ranges
        )
        return tuple((places[start], places[end - 1] + 1) for start, end in moved if start < end)

    def after(self, letters: str) -> Italics:
        """The same with upright letters put before it."""
        own = len(letters)
        moved = tuple((start + own, end + own) for start, end in self.ranges)
        return Italics(letters=letters + self.letters, ranges=moved)


def italics_of(pieces: Iterable[tuple[str, bool]]) -> Italics:
    """The italics of a paragraph of these pieces, each with whether it is italic; joined where they touch."""
    letters: list[str] = []
    ranges: list[tuple[int, int]] = []
    at = 0
    for text, italic in pieces:
        own = "".join(kept(text).split())
        letters.append(own)
        if italic and own:
            start = ranges.pop()[0] if ranges and ranges[-1][1] == at else at
            ranges.append((start, at + len(own)))
        at += len(own)
    return Italics(letters="".join(letters), ranges=tuple(ranges)) if ranges else Italics()
