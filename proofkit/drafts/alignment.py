"""Which word of one draft is which word of the next, wherever it stands now.

Runs of words that occur once in both drafts are linked first, wherever they are, and grow along equal
neighbours on either side (P. Heckel, A technique for isolating differences between files, Communications
of the ACM 21, 1978): so a paragraph that was moved is known again. What then lies between two linked
words is compared in its order. A word that another has replaced all through, as where somebody was
given a new name, is that other.
"""

from __future__ import annotations

import re
import unicodedata
from bisect import bisect_left, bisect_right
from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from difflib import SequenceMatcher

from proofkit.book import Span

NOWHERE = -1

_RUNS = (12, 6, 5)  # words; shorter runs recur by chance
_SCRAPS = (4, 3, 2)  # words, where all else is known already
_TIMES = 3  # that such scraps may recur
_ALIKE = 0.3  # share of a gap's words below which its single words agree by chance
_EVERY = 4_000_000  # pairs of words up to which common words are compared too
_OFTEN = 2  # times that a word was replaced by the same other

# A letter may be followed by its accent, as files from some machines have it.
WORD = re.compile(r"[^\W_](?:[^\W_]|[\u0300-\u036f])*")


@dataclass(frozen=True, slots=True, kw_only=True)
class Words:
    """The words of a draft in order, made comparable, and where each starts and ends: page, character."""

    texts: tuple[str, ...]
    starts: tuple[tuple[int, int], ...]
    ends: tuple[tuple[int, int], ...]

    def span(self, word: int) -> Span:
        """Where a word stands."""
        (page, start), (_page, end) = self.starts[word], self.ends[word]
        return Span(page=page, start=start, end=end)

    def within(self, span: Span) -> tuple[int, int]:
        """The words that a span touches, as a half-open range; an empty one where it touches none."""
        first = bisect_right(self.ends, (span.page, span.start))
        last = bisect_left(self.starts, (span.page, span.end))
        return first, max(first, last)

    def pages(self) -> Iterator[tuple[int, int]]:
        """The words of each page that has any, as a half-open range."""
        start = 0
        while start < len(self.starts):
            end = bisect_left(self.starts, (self.starts[start][0] + 1, 0), start)
            yield start, end
            start = end


def words_of(pages: Sequence[str]) -> Words:
    """The words of a book of these page texts."""
    texts, starts, ends = [], [], []
    for number, page in enumerate(pages, 1):
        for word in WORD.finditer(page):
            texts.append(unicodedata.normalize("NFC", word.group()).casefold())
            starts.append((number, word.start()))
            ends.append((number, word.end()))
    return Words(texts=tuple(texts), starts=tuple(starts), ends=tuple(ends))


def linked(old: Words, new: Words) -> tuple[int, ...]:
    """For each word of ``old`` its place in ``new``, or NOWHERE; no two have the same place."""
    links = _Links(old.texts, new.texts)
    links.link_pages(old, new)
    for length in _RUNS:
        links.link_runs(length)
    links.grow()
    links.fill_gaps()
    links.follow_renamed()
    for length in _SCRAPS:
        links.link_runs(length, times=_TIMES)
        links.grow()
    links.fill_gaps()
    return tuple(links.forth)


class _Links:
    """The links found so far: ``forth`` from old to new, ``back`` from new to old."""

    def __init__(self, old: Sequence[str], new: Sequence[str]) -> None:
        self.old, self.new = old, new
        self.forth = [NOWHERE] * len(old)
        self.back = [NOWHERE] * len(new)

    def link_pages(self, old: Words, new: Words) -> None:
        """Link the pages whose words are the same, where there is but one such page in either draft."""
        ours, theirs = _pages(old), _pages(new)
        for words, places in ours.items():
            if len(places) == 1 == len(theirs.get(words, ())):
                for step in range(len(words)):
                    self._link(places[0] + step, theirs[words][0] + step)

    def link_runs(self, length: int, *, times: int = 1) -> None:
        """Link the runs of that many words that are in what is left of both drafts as often.

        ``times`` is how often that may be; where it is more than once, they keep their order.
        """
        ours = _runs(self.old, self.forth, length)
        theirs = _runs(self.new, self.back, length)
        for run, places in ours.items():
            if len(places) <= times and len(places) == len(theirs.get(run, ())):
                for our, their in zip(places, theirs[run], strict=True):
                    for step in range(length):
                        self._link(our + step, their + step)

    def grow(self) -> None:
        """Link equal words beside linked ones."""
        gaps = _gaps(self.forth)
        for start, end in gaps:
            for at in range(max(start, 1), end):
                if not self._link_equal(at, self.forth[at - 1], 1):
                    break
        for start, end in gaps:
            for at in range(min(end, len(self.old) - 1) - 1, start - 1, -1):
                if not self._link_equal(at, self.forth[at + 1], -1):
                    break

    def fill_gaps(self) -> None:
        """Link what is equal, in its order, between two linked words."""
        for start, end in _gaps(self.forth):
            for low, high in self._facing(start, end):
                for our, their, length in _in_order(self.old[start:end], self.new[low:high]):
                    for step in range(length):
                        self._link(start + our + step, low + their + step)

    def follow_renamed(self) -> None:
        """Link the words that the same other word has replaced all through, and read them as that word."""
        pairs = [pair for start, end in _gaps(self.forth) for pair in self._replaced(start, end)]
        often = Counter((self.old[our], self.new[their]) for our, their in pairs)
        here, before = set(self.new), set(self.old)
        renamed = {
            (old, new)
            for (old, new), times in often.items()
            if times >= _OFTEN and (old not in here or new not in before)
        }
        for our, their in pairs:
            if (self.old[our], self.new[their]) in renamed:
                self._link(our, their)
        wholly = {old: new for old, new in renamed if old not in here}
        self.old = [wholly.get(word, word) for word in self.old]

    def _replaced(self, start: int, end: int) -> Iterator[tuple[int, int]]:
        """Each word of a gap with its successor, where as many words stand in its place."""
        low = self.forth[start - 1] + 1 if start else 0
        high = self.forth[end] if end < len(self.old) else len(self.new)
        if high - low == end - start and not any(b != NOWHERE for b in self.back[low:high]):
            yield from zip(range(start, end), range(low, high), strict=True)

    def _facing(self, start: int, end: int) -> list[tuple[int, int]]:
        """Where in the new draft the words of a gap may be: between its neighbours, or beside each."""
        left = self.forth[start - 1] if start else NOWHERE
        right = self.forth[end] if end < len(self.old) else len(self.new)
        if left < right and all(b == NOWHERE for b in self.back[left + 1 : right]):
            return [(left + 1, right)]
        after, before = left + 1, right
        while after < len(self.new) and self.back[after] == NOWHERE:
            after += 1
        while before > 0 and self.back[before - 1] == NOWHERE:
            before -= 1
        return [(left + 1, after), (before, right)]

    def _link_equal(self, our: int, beside: int, step: int) -> bool:
        """Link a word with the one a step on from its neighbour's place; whether it is linked now."""
        their = beside + step
        inside = beside != NOWHERE and 0 <= their < len(self.new)
        if inside and self.forth[our] == NOWHERE and self.old[our] == self.new[their]:
            self._link(our, their)
        return self.forth[our] != NOWHERE

    def _link(self, our: int, their: int) -> None:
        if self.forth[our] == NOWHERE and self.back[their] == NOWHERE:
            self.forth[our], self.back[their] = their, our


def _pages(draft: Words) -> dict[tuple[str, ...], list[int]]:
    """Where the pages of each text start, but for those of hardly a word."""
    places = defaultdict(list)
    for start, end in draft.pages():
        if end - start >= min(_RUNS):
            places[draft.texts[start:end]].append(start)
    return places


def _runs(
    words: Sequence[str], links: Sequence[int], length: int
) -> dict[tuple[str, ...], list[int]]:
    """Where each run of unlinked words starts, in order."""
    places = defaultdict(list)
    free = 0
    for end in range(1, len(words) + 1):
        free = free + 1 if links[end - 1] == NOWHERE else 0
        if free >= length:
            places[tuple(words[end - length : end])].append(end - length)
    return places


def _gaps(links: Sequence[int]) -> list[tuple[int, int]]:
    """The runs of words that are not linked."""
    gaps, start = [], None
    for at, link in enumerate((*links, 0)):
        if link == NOWHERE and start is None:
            start = at
        elif link != NOWHERE and start is not None:
            gaps.append((start, at))
            start = None
    return gaps


def _in_order(ours: Sequence[str], theirs: Sequence[str]) -> Iterator[tuple[int, int, int]]:
    """The blocks of words that agree, in their order: where, where, and how many."""
    if not ours or not theirs:
        return
    matcher = SequenceMatcher(None, ours, theirs, autojunk=len(ours) * len(theirs) > _EVERY)
    blocks = matcher.get_matching_blocks()[:-1]
    by_chance = sum(block.size for block in blocks) < _ALIKE * min(len(ours), len(theirs))
    for block in blocks:
        if block.size > 1 or not by_chance:
            yield block.a, block.b, block.size
