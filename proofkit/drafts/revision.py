"""What became of the places of one draft in the next: where they are, what of them still stands."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from proofkit.book import Span
from proofkit.drafts.alignment import NOWHERE, WORD, linked, words_of
from proofkit.drafts.side import Range, Side

_STANDS = 0.5  # share of a sentence's words by which it is the same sentence
_PASSAGE_STANDS = (
    0.3  # the same where the whole sentence is at fault: mended, it may be half as long
)
_AROUND = 8  # words on either side that are looked at: where a stop is lacking a sentence runs on
_BESIDE = 2  # words on either side of those at fault, one of which must stand
_PASSAGE = 4  # words at fault from which on they are the sentence
_DRIFT = 6  # words that may stand in the place of those at fault, beyond their number


@dataclass(frozen=True, slots=True, kw_only=True)
class Covered:
    """Words of the newest draft by their places, and of places without a word the word that each lies before."""

    words: frozenset[int]
    gaps: frozenset[int]


class Revision:
    """Two drafts of a book, given by their pages' texts, and the way of each word between them."""

    def __init__(self, last: Sequence[str], now: Sequence[str]) -> None:
        old, new = words_of(last), words_of(now)
        forth = linked(old, new)
        back = [NOWHERE] * len(new.texts)
        for word, link in enumerate(forth):
            if link != NOWHERE:
                back[link] = word
        self._renames = {
            old.texts[word]: new.texts[link]
            for word, link in enumerate(forth)
            if link != NOWHERE and old.texts[word] != new.texts[link]
        }
        self._stands: dict[Span, bool] = {}
        self._last = Side(last, old, forth)
        self._now = Side(now, new, back)

    def meet(self, old: Span, new: Span) -> bool:
        """Whether a place of the last draft and one of the newest have a word in common.

        Two places without a word, as between two marks, meet where they lie beside the same word.
        """
        first, last = self._last.within(old)
        start, end = self._now.within(new)
        if first < last and start < end:
            return any(start <= self._last.links[word] < end for word in range(first, last))
        if first == last and start == end:
            left, right = self._last.link(first - 1), self._last.link(first)
            return left == start - 1 != NOWHERE or right == start != NOWHERE
        return False

    def covered(self, places: Iterable[Span]) -> Covered:
        """What some places of the newest draft cover, worked out once for all that may meet them."""
        ranges = [self._now.within(place) for place in places]
        return Covered(
            words=frozenset(word for start, end in ranges for word in range(start, end)),
            gaps=frozenset(start for start, end in ranges if start == end),
        )

    def met(self, old: Iterable[Span], new: Covered) -> int:
        """How many places of the last draft meet, as ``meet`` has it, any of those that ``new`` covers."""
        return sum(self._met(*self._last.within(place), new) for place in old)

    def _met(self, first: int, last: int, new: Covered) -> bool:
        if first < last:
            return not new.words.isdisjoint(self._last.links[first:last])
        left, right = self._last.link(first - 1), self._last.link(first)
        return (left != NOWHERE and left + 1 in new.gaps) or (
            right != NOWHERE and right in new.gaps
        )

    def reach(self, old: Span, new: Span) -> bool:
        """Whether a place of the newest draft touches what stands in the place of one of the last."""
        carried = self._carried(*self._last.within(old))
        if carried is None:
            return False
        (first, last), (start, end) = carried, self._now.within(new)
        if first < last and start < end:
            return first < end and start < last
        return first <= end and start <= last

    def carried(self, old: Span) -> Span | None:
        """Where in the newest draft a place of the last one is; None where its words are gone."""
        place = self._carried(*self._last.within(old))
        return None if place is None else self._span(*place)

    def untouched(self, old: Span) -> bool:
        """Whether the sentence around a place of the last draft stands to the letter, words beside it too."""
        return _same(self._last, self._now, self._last.sentence(old), page=old.page)

    def unchanged(self, new: Span) -> bool:
        """Whether a place of the newest draft stood to the letter in the last, with a word on either side."""
        return _same(self._now, self._last, self._now.within(new), page=new.page)

    def renamed(self, text: str) -> str:
        """A text of the last draft with the words that others have replaced all through as they are now."""
        return WORD.sub(lambda word: self._successor(word.group()), text)

    def _successor(self, word: str) -> str:
        other = self._renames.get(word.casefold())
        return word if other is None else other.capitalize() if word[0].isupper() else other

    def is_new(self, new: Span) -> bool:
        """Whether no word of a place of the newest draft, or beside it if it has none, was in the last."""
        first, last = self._now.within(new)
        words = range(first, last) if first < last else (first - 1, first)
        return all(self._now.link(word) == NOWHERE for word in words)

    def still_stands(self, old: Span) -> bool:
        """Whether the sentence around a place of the last draft is in the newest, slip or no slip."""
        if old not in self._stands:
            self._stands[old] = self._still_stands(old)
        return self._stands[old]

    def _still_stands(self, old: Span) -> bool:
        first, last = self._last.within(old)
        start, end = self._last.sentence(old)
        before = range(max(min(start, first), first - _AROUND), first)
        after = range(last, min(max(end, last), last + _AROUND))
        if first == last:  # a mark hangs on the word before it, where there is one
            side = before or after
            short = len(side) <= _BESIDE and self._something_between(side.start, side.stop)
            return self._stand(side, side[-_BESIDE:] if before else side[:_BESIDE]) or short
        rest = (*before, *after)
        if last - first >= max(_PASSAGE, len(rest)):
            return self._share(range(start, end)) >= _PASSAGE_STANDS
        if self._cut_out(first, last, rest):
            return False
        beside = (*before[-_BESIDE:], *after[:_BESIDE])
        replaced = len(rest) <= _BESIDE and self._something_between(start, end)
        return replaced or self._stand(rest, beside)

    def _stand(self, words: Sequence[int], beside: Sequence[int]) -> bool:
        """Whether enough of some words stand, and of those beside the place at least one."""
        return self._share(words) >= _STANDS and self._share(beside) > 0

    def _cut_out(self, first: int, last: int, rest: Sequence[int]) -> bool:
        """Whether nothing stands in the place of some words, and a word beside them went too."""
        gone = all(self._last.link(word) == NOWHERE for word in range(first, last))
        ends = [self._last.link(word) for word in (first - 1, last) if word in rest]
        one_stands = any(
            link != NOWHERE for link in (self._last.link(first - 1), self._last.link(last))
        )
        return gone and NOWHERE in ends and one_stands and not self._something_between(first, last)

    def same_sentence(self, old: Span, new: Span) -> bool:
        """Whether a place of the last draft and one of the newest are at the same part of the same sentence."""
        start, end = self._last.sentence(old)
        low, high = self._now.sentence(new)
        ours = (self._renames.get(word, word) for word in self._last.words.texts[start:end])
        same_part = self._last.within(old)[0] - start == self._now.within(new)[0] - low
        return start < end and same_part and (*ours,) == self._now.words.texts[low:high]

    def _something_between(self, start: int, end: int) -> bool:
        """Whether new words stand where a short sentence stood."""
        left, right = self._last.link(start - 1), self._last.link(end)
        if left != NOWHERE and left + 1 < len(self._now.links):
            return self._now.links[left + 1] == NOWHERE
        return right > 0 and self._now.links[right - 1] == NOWHERE

    def _carried(self, first: int, last: int) -> Range | None:
        inside = [
            self._last.links[at] for at in range(first, last) if self._last.links[at] != NOWHERE
        ]
        left, right = self._last.link(first - 1), self._last.link(last)
        room = last - first + _DRIFT
        if inside:
            return self._widened(inside, left, right, room)
        if NOWHERE not in (left, right) and 0 <= right - left - 1 <= room:
            return left + 1, right
        if left != NOWHERE:
            return left + 1, left + 1
        return (right, right) if right != NOWHERE else None

    def _widened(self, inside: Sequence[int], left: int, right: int, room: int) -> Range:
        """From the first to the last linked word, with the new ones up to the neighbours."""
        low, high = inside[0], inside[0] + 1
        for at in inside[1:]:
            if low <= at < low + room:
                high = max(high, at + 1)
        if left != NOWHERE and 0 <= low - left - 1 <= _DRIFT and self._all_new(left + 1, low):
            low = left + 1
        if right != NOWHERE and 0 <= right - high <= _DRIFT and self._all_new(high, right):
            high = right
        return low, high

    def _all_new(self, start: int, end: int) -> bool:
        return all(self._now.links[at] == NOWHERE for at in range(start, end))

    def _share(self, words: Sequence[int]) -> float:
        """The share of some words of the last draft that stand near one another in the newest."""
        links = sorted(link for word in words if (link := self._last.links[word]) != NOWHERE)
        reach = 2 * len(words) + _DRIFT
        near = (bisect_left(links, link + reach) - at for at, link in enumerate(links))
        return max(near, default=0) / len(words) if words else 0.0

    def _span(self, first: int, last: int) -> Span:
        words = self._now.words
        if first < last:
            start, end = words.span(first), words.span(last - 1)
            same_page = start.page == end.page
            return Span(page=start.page, start=start.start, end=end.end if same_page else start.end)
        page, at = words.ends[first - 1] if first else words.starts[0]
        return Span(page=page, start=at, end=at)


def _same(here: Side, there: Side, words: Range, *, page: int) -> bool:
    """Whether the words and one on either side, to the ends of their page, are the same on both sides."""
    top, foot = not here.is_on(words[0] - 1, page), not here.is_on(words[1], page)
    low, high = words[0] - (not top), words[1] + (not foot)
    if low == high:
        return here.pages[page - 1] in there.pages
    first = here.links[low]
    if first == NOWHERE or any(
        here.links[low + step] != first + step for step in range(high - low)
    ):
        return False
    ours = here.text((low, high), from_top=top, to_foot=foot)
    theirs = there.text((first, first + high - low), from_top=top, to_foot=foot)
    return ours is not None and ours == theirs
