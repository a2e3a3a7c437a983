"""One of two drafts that are compared: its pages, its words, and where each is in the other draft."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Sequence

from proofkit.book import Span
from proofkit.drafts.alignment import NOWHERE, Words
from proofkit.reading.sentences import sentences

Range = tuple[int, int]  # words, half open; an empty one lies before its first


class Side:
    """A draft by its pages' texts and words; ``links`` has each word's place in the other draft.

    What is asked again and again, for every issue that might be another, is worked out once.
    """

    def __init__(self, pages: Sequence[str], words: Words, links: Sequence[int]) -> None:
        self.pages, self.words, self.links = pages, words, links
        self._within: dict[Span, Range] = {}
        self._around: dict[Span, Range] = {}
        self._sentences: dict[int, list[tuple[int, int]]] = {}

    def link(self, word: int) -> int:
        """Where a word is in the other draft; NOWHERE for one that is not there, or is no word."""
        return self.links[word] if 0 <= word < len(self.links) else NOWHERE

    def is_on(self, word: int, page: int) -> bool:
        """Whether there is such a word, on that page."""
        return 0 <= word < len(self.links) and self.words.starts[word][0] == page

    def within(self, span: Span) -> Range:
        """The words that a span touches."""
        if span not in self._within:
            self._within[span] = self.words.within(span)
        return self._within[span]

    def sentence(self, span: Span) -> Range:
        """The words of the sentences that a span touches."""
        if span not in self._around:
            self._around[span] = self._sentence(span)
        return self._around[span]

    def text(self, words: Range, *, from_top: bool, to_foot: bool) -> str | None:
        """The page's text around some words; None where they are not on one page."""
        first, last = self.words.span(words[0]), self.words.span(words[1] - 1)
        if first.page != last.page:
            return None
        page = self.pages[first.page - 1]
        return page[0 if from_top else first.start : len(page) if to_foot else last.end]

    def _sentence(self, span: Span) -> Range:
        every = self._sentences_of(span.page)
        first = bisect_left(every, span.start, key=lambda each: each[1])
        last = bisect_right(every, span.end, key=lambda each: each[0])
        if first >= last:
            return self.within(span)
        start, end = every[first][0], every[last - 1][1]
        return self.within(Span(page=span.page, start=start, end=end))

    def _sentences_of(self, page: int) -> list[tuple[int, int]]:
        if page not in self._sentences:
            self._sentences[page] = list(sentences(self.pages[page - 1]))
        return self._sentences[page]
