"""Where in the Word file each issue's comment is anchored."""

from __future__ import annotations

from bisect import bisect_right
from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from proofkit.book import Book, Page
from proofkit.readers.characters import kept
from proofkit.readers.elements import Element
from proofkit.readers.word import Passage
from proofkit.readers.word_places import Spot, aligned, letters_of, references_of, stand_in


@dataclass(frozen=True, slots=True, kw_only=True)
class Anchor:
    """The file's characters from ``first`` to ``last``, or what stands for them in the text.

    ``beside`` is what they lie in if not in the text itself: "footnote", "endnote", "text box".
    """

    first: Spot
    last: Spot
    beside: str = ""


class Anchors:
    """The anchors of a book's characters in the passages of a Word file.

    ``locators`` has for each paragraph of each page, counted from 0, the locator of its passage;
    ``labels`` has the locators of page labels as far as they are known.
    """

    def __init__(
        self,
        book: Book,
        passages: Sequence[Passage],
        *,
        locators: Mapping[tuple[int, int], str],
        labels: Mapping[int, str],
    ) -> None:
        self._book = book
        self._passages = passages
        self._by_locator: dict[str, list[Passage]] = defaultdict(list)
        for passage in passages:
            self._by_locator[passage.locator].append(passage)
        self._locators = locators
        self._labels = labels
        self._references = references_of(passages)
        self._members: dict[str, list[tuple[int, int]]] = defaultdict(list)
        for place, locator in locators.items():
            self._members[locator].append(place)
        self._spots: dict[tuple[int, int], tuple[Spot | None, ...] | None] = {}

    def of(self, page: int, start: int, end: int) -> Anchor | None:
        """The anchor of characters ``start`` to ``end`` of a page.

        What is about no characters is about the page and has its label's, or else its paragraph's. None
        where the file has no words to hold on to.
        """
        here = self._book.page(page)
        if not here.paragraphs or (start == end == 0 and self._label_of(here)):
            return self._label(here)
        index = _paragraph_at(here, start)
        if beside := self._beside(page, index):
            return beside
        first = self._spot(page, start, end, step=1)
        last = self._spot(page, end - 1, start - 1, step=-1)
        if start < end and first and last:
            return Anchor(first=first, last=last)
        return self._whole(self._locators.get((page, index), "")) or self._label(here)

    def _spot(self, page: int, at: int, stop: int, *, step: int) -> Spot | None:
        """The nearest spot from ``at`` towards ``stop`` that lies in the text itself."""
        here = self._book.page(page)
        for place in range(at, stop, step):
            index = _paragraph_at(here, place)
            paragraph = here.paragraphs[index]
            if not paragraph.start <= place < paragraph.end or self._beside(page, index):
                continue
            spots = self._aligned(page, index)
            if spots is None:
                return None
            if spot := spots[place - paragraph.start]:
                return spot
        return None

    def _aligned(self, page: int, index: int) -> tuple[Spot | None, ...] | None:
        if (page, index) not in self._spots:
            locator = self._locators.get((page, index), "")
            places = self._members[locator] or [(page, index)]
            letters = [
                letter for passage in self._by_locator[locator] for letter in letters_of(passage)
            ]
            texts = [self._text(*place) for place in places]
            self._spots |= dict(zip(places, aligned(texts, letters), strict=True))
        return self._spots.get((page, index))

    def _text(self, page: int, index: int) -> str:
        here = self._book.page(page)
        paragraph = here.paragraphs[index]
        return here.text[paragraph.start : paragraph.end]

    def _beside(self, page: int, index: int) -> Anchor | None:
        locator = self._locators.get((page, index), "")
        for passage in self._by_locator[locator]:
            element = stand_in(passage, self._references)
            if element is not None:
                kind = locator.partition(" ")[0] if locator in self._references else "text box"
                spot = _element(element)
                return Anchor(first=spot, last=spot, beside=kind)
        return None

    def _whole(self, locator: str) -> Anchor | None:
        """A whole passage of the text, but for the white space at its ends."""
        letters = [x for passage in self._by_locator[locator] for x in letters_of(passage)]
        spots = [letter.spot for letter in letters if not letter.text.isspace()]
        return Anchor(first=spots[0], last=spots[-1]) if spots else None

    def _label(self, page: Page) -> Anchor | None:
        """The label of a page; where it has none, the passage before or after."""
        for passage in self._around(self._label_of(page), page):
            if stand_in(passage, self._references) is None and (
                anchor := self._whole(passage.locator)
            ):
                return anchor
        return None

    def _label_of(self, page: Page) -> str:
        return self._labels.get(page.number) or self._labelled(page)

    def _labelled(self, page: Page) -> str:
        """The locator of the first passage that begins with the page's label, after what stands before it."""
        label = "".join(page.label.split())
        for passage in self._passages[self._passages_before(page) :] if label else ():
            text = kept("".join(run.text for run in passage.runs))
            if "".join(text.split()).lstrip("[({*_#-–—").startswith(label):
                return passage.locator
        return ""

    def _passages_before(self, page: Page) -> int:
        """How many passages come before the page, as far as the pages before it tell."""
        earlier = {
            self._locators.get((before.number, index))
            for before in self._book.pages[: page.number - 1]
            for index in range(len(before.paragraphs))
        }
        places = [at for at, passage in enumerate(self._passages) if passage.locator in earlier]
        return places[-1] if places else 0

    def _around(self, locator: str, page: Page) -> Sequence[Passage]:
        if locator:
            return self._by_locator[locator]
        before = self._passages_before(page)
        return (*self._passages[before:], *reversed(self._passages[:before]))


def _paragraph_at(page: Page, at: int) -> int:
    """The paragraph that character ``at`` lies in, or the last one before it."""
    return max(0, bisect_right(page.paragraphs, at, key=lambda p: p.start) - 1)


def _element(element: Element) -> Spot:
    return Spot(first=element, start=0, last=element, end=1)
