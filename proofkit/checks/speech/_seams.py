"""Where speech and the story around it meet."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import dataclass

from proofkit.book import Book, Page
from proofkit.words import nearby
from proofkit.words.quotation_marks import Mark
from proofkit.words.quotations import Quotation, Quotations, quotations_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Seam:
    """One speech with both its marks.

    ``before``    the words of its paragraph up to the opening mark, from the speech before it on
    ``inner``     the words of the speech
    ``after``     the words of the paragraph after the closing mark, up to the next mark
    ``previous``  the speech before it in the same paragraph
    """

    opening: Mark
    closing: Mark
    before: str
    inner: str
    after: str
    previous: Seam | None = None

    @property
    def words(self) -> int:
        """How many words the speech has."""
        return len(self.inner.split())

    @property
    def goes_on(self) -> bool:
        """Whether it goes on with a sentence that a reporting clause broke off."""
        return self.previous is not None and self.previous.inner.rstrip()[-1:] not in (".", "")


def seams(book: Book, quotations: Quotations | None = None) -> Iterator[Seam]:
    """Every speech that has both its marks, in order."""
    found = quotations if quotations is not None else quotations_of(book)
    last: Seam | None = None
    every = found.speech
    for at, quotation in enumerate(every):
        if quotation.opening is None or quotation.closing is None:
            last = None
            continue
        following = every[at + 1].opening if at + 1 < len(every) else None
        last = _seam(book, quotation, quotation.opening, quotation.closing, following, last)
        yield last


def _seam(
    book: Book,
    quotation: Quotation,
    opening: Mark,
    closing: Mark,
    following: Mark | None,
    last: Seam | None,
) -> Seam:
    page, end_page = book.page(opening.span.page), book.page(closing.span.page)
    start = paragraph_at(page, opening.span.start)[0]
    previous = None
    if last is not None and last.closing.span >= page.span(start, start):
        previous, start = last, last.closing.span.end
    end = paragraph_at(end_page, closing.span.start)[1]
    if following is not None and following.span.page == end_page.number:
        end = min(end, following.span.start)
    return Seam(
        opening=opening,
        closing=closing,
        before=page.prose[start : opening.span.start],
        inner="\n\n".join(book.page(p.page).prose[p.start : p.end] for p in quotation.parts),
        after=end_page.prose[closing.span.end : end],
        previous=previous,
    )


def paragraph_at(page: Page, at: int) -> tuple[int, int]:
    """Start and end of the paragraph that holds the character ``at``."""
    place = bisect_right(page.paragraphs, at, key=lambda paragraph: paragraph.start) - 1
    paragraph = page.paragraphs[max(place, 0)]
    return paragraph.start, paragraph.end


def last_word_start(page: Page, at: int) -> int:
    """Where on the page the last word before ``at`` begins."""
    end = len(nearby.before(page.prose, at).rstrip())
    words = nearby.before(page.prose, at)[:end]
    return at - len(nearby.before(page.prose, at)) + max(words.rfind(" "), words.rfind("\n")) + 1


def first_word_end(text: str) -> int:
    """Where the first word of ``text`` ends, white space before it included, stops after it not."""
    match = re.match(r"\s*[\w'’-]+", text)
    return match.end() if match else 0
