"""Which pages changed between two drafts, and in which words.

Pages are paired by what stands on them, not by their numbers: one that was carried to another place in
the book is moved, not cut and written anew, and so are words carried from page to page. White space
counts for little: where nothing else changed on a page, that is said, and no more.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import groupby

from proofkit.drafts.draft import Draft, DraftPage
from proofkit.drafts.tokens import Token, Tokens, longest_rise, tokens_of

_PAIRED = 0.3  # share of the words of the shorter of two pages that makes them one
_MADE_OF = 0.5  # share of a page's words by which it was made out of others
_CARRIED = 3  # words from which on they were carried, and did not come up twice by chance
_CONTEXT = 4  # words on either side


class Change(StrEnum):
    """What was done with some words."""

    REPLACED = "replaced"
    ADDED = "added"
    CUT = "cut"
    MOVED_HERE = "moved here"
    MOVED_AWAY = "moved away"


@dataclass(frozen=True, slots=True, kw_only=True)
class WordChange:
    """Some words of a page that changed.

    ``was``, ``now``     the words in the older and in the newer draft; one of them may be ""
    ``before``, ``after`` a few words on either side, as they are in the newer draft
    ``page``             for words carried over, the page they came from or went to, by its place
    """

    change: Change
    was: str = ""
    now: str = ""
    before: str = ""
    after: str = ""
    page: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class PageChange:
    """A page that is not as it was. ``now`` None: it was taken out; ``was`` None: it was put in.

    ``moved``     it stands elsewhere among the pages that were kept
    ``relabelled`` its label changed, and not merely its number
    ``spacing``   nothing but spaces or the ends of lines changed
    ``others``    for a page put in, the older pages that it was made out of; for one taken out, the newer
        pages that its words went to; by their places
    """

    was: DraftPage | None
    now: DraftPage | None
    moved: bool = False
    relabelled: bool = False
    spacing: bool = False
    others: tuple[int, ...] = ()
    words: tuple[WordChange, ...] = ()


def changes_between(was: Draft, now: Draft) -> tuple[PageChange, ...]:
    """The pages that changed from one draft to another, in the order of the newer one.

    A page taken out comes after the one that it followed.
    """
    compared = _Pages(was, now)
    return tuple(sorted(compared.changes(), key=compared.order))


class _Pages:
    """The pages of two drafts, paired."""

    def __init__(self, was: Draft, now: Draft) -> None:
        self._was, self._now = was.pages, now.pages
        self._old, self._new = tokens_of(was.texts, now.texts)
        self._pairs = dict(self._paired())  # from a place in the newer draft to one in the older
        in_order = sorted(self._pairs)
        kept = longest_rise([self._pairs[place] for place in in_order])
        self._moved = {place for at, place in enumerate(in_order) if at not in kept}

    def changes(self) -> Iterator[PageChange]:
        for page in self._now:
            was = self._pairs.get(page.number)
            if was is None:
                yield PageChange(was=None, now=page, others=self._made_of(self._new, page.number))
            else:
                yield from self._changed(self._was[was - 1], page)
        left = {*range(1, len(self._was) + 1)} - {*self._pairs.values()}
        for place in sorted(left):
            others = self._made_of(self._old, place)
            yield PageChange(was=self._was[place - 1], now=None, others=others)

    def order(self, change: PageChange) -> tuple[int, int]:
        """Where a change is told of."""
        if change.now:
            return change.now.number, 0
        assert change.was is not None  # noqa: S101 - a change is of a page, old or new
        successor = {was: now for now, was in self._pairs.items()}
        before = [successor[p] for p in range(1, change.was.number) if p in successor]
        return (before[-1] if before else 0), change.was.number

    def _paired(self) -> Iterator[tuple[int, int]]:
        """Each page of the newer draft with the older one that most of its words come from."""
        shared = Counter(
            (token.page, token.partner.page)
            for page in self._new.pages
            for token in page
            if token.partner
        )
        taken: tuple[set[int], set[int]] = set(), set()
        for (new, old), words in sorted(shared.items(), key=lambda each: (-each[1], each[0])):
            least = min(len(self._new.page(new)), len(self._old.page(old)))
            if new not in taken[0] and old not in taken[1] and words >= _PAIRED * least:
                taken[0].add(new)
                taken[1].add(old)
                yield new, old
        yield from self._paired_by_text(*taken)

    def _paired_by_text(self, new: set[int], old: set[int]) -> Iterator[tuple[int, int]]:
        """Pages with hardly a word, as blank ones: by all that is on them, in their order."""
        left = defaultdict(list)
        for page in self._was:
            if page.number not in old:
                left[page.text.strip()].append(page.number)
        for page in self._now:
            if page.number not in new and left[page.text.strip()]:
                yield page.number, left[page.text.strip()].pop(0)

    def _changed(self, was: DraftPage, now: DraftPage) -> Iterator[PageChange]:
        old, new = self._old.page(was.number), self._new.page(now.number)
        words = tuple(_word_changes(old, new, (was.number, now.number)))
        change = PageChange(
            was=was,
            now=now,
            moved=now.number in self._moved,
            relabelled=_bare(was.label) != _bare(now.label),
            spacing=not words and was.text != now.text,
            words=words,
        )
        if change.moved or change.relabelled or change.spacing or words:
            yield change

    def _made_of(self, side: Tokens, place: int) -> tuple[int, ...]:
        page = side.page(place)
        sources = Counter(token.partner.page for token in page if token.partner)
        if not page or sources.total() < _MADE_OF * len(page):
            return ()
        return tuple(sorted(other for other, words in sources.items() if words >= _CARRIED))


def _bare(label: str) -> str:
    """A label without its numbers: pages that moved up are not pages with another name."""
    return " ".join("".join(c for c in label.casefold() if c.isalpha() or c == " ").split())


def _word_changes(
    was: Sequence[Token], now: Sequence[Token], places: tuple[int, int]
) -> Iterator[WordChange]:
    """What changed on a page, run by run; ``places`` are its own in the older and the newer draft."""
    for (low, high), (start, end) in _runs_apart(was, now):
        before = _text(now[max(0, start - _CONTEXT) : start])
        after = _text(now[end : end + _CONTEXT])
        away, cut = _carried(was[low:high], places[1])
        here, added = _carried(now[start:end], places[0])
        for page, words in away:
            yield WordChange(
                change=Change.MOVED_AWAY, was=words, before=before, after=after, page=page
            )
        if cut or added:
            change = Change.REPLACED if cut and added else Change.CUT if cut else Change.ADDED
            yield WordChange(change=change, was=cut, now=added, before=before, after=after)
        for page, words in here:
            yield WordChange(
                change=Change.MOVED_HERE, now=words, before=before, after=after, page=page
            )


def _runs_apart(
    was: Sequence[Token], now: Sequence[Token]
) -> Iterator[tuple[tuple[int, int], tuple[int, int]]]:
    """The runs of both pages that lie between the words that stand as they stood."""
    places = {token: at for at, token in enumerate(was)}
    partners = [
        (at, places[token.partner])
        for at, token in enumerate(now)
        if token.partner in places
    ]  # fmt: skip
    kept = longest_rise([old for _new, old in partners])
    same = [
        (new, old)
        for at, (new, old) in enumerate(partners)
        if at in kept and was[old].text == now[new].text
    ]
    start, low = 0, 0
    for new, old in (*same, (len(now), len(was))):
        first, last = _trimmed(was[low:old], now[start:new])
        if (low + first, start + first) != (old - last, new - last):
            yield (low + first, old - last), (start + first, new - last)
        start, low = new + 1, old + 1


def _trimmed(was: Sequence[Token], now: Sequence[Token]) -> tuple[int, int]:
    """How many tokens two runs have in common at their beginning, and then at their end."""
    shorter = min(len(was), len(now))
    first = 0
    while first < shorter and was[first].text == now[first].text:
        first += 1
    last = 0
    while last < shorter - first and was[-1 - last].text == now[-1 - last].text:
        last += 1
    return first, last


def _carried(run: Sequence[Token], own: int) -> tuple[list[tuple[int, str]], str]:
    """Of some words that changed those carried from or to another page; and all the others.

    ``own`` is the place of their own page in the other draft.
    """
    carried, rest = [], []
    for page, group in groupby(run, key=lambda token: token.partner and token.partner.page):
        tokens = list(group)
        if page is None or page == own or len(tokens) < _CARRIED:
            rest += tokens
        else:
            carried.append((page, _text(tokens)))
    return carried, _text(rest)


def _text(tokens: Sequence[Token]) -> str:
    return " ".join(token.text for token in tokens)
