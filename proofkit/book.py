"""What a manuscript is: a book of pages, each with its text and the roles of its paragraphs.

Every position in proofkit counts characters of one page's own ``text``. A page's text is the
author's, verbatim but for line joining: soft-wrapped lines are joined by one space, lines that the
author broke on purpose by a newline, paragraphs by a blank line.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from enum import StrEnum

# A word for counting is a run without white space that holds a letter or a digit, so that
# "whirr-tick", "don't" and "1,000" are one word each (Flesch, How to Write Plain English, 1979, ch. 2).
# A closed-up dash or ellipsis parts two words. It must begin where a run begins: looking from every
# character of a long leader of dots would take time in its square.
_COUNTED_WORD = re.compile(r"(?<![^\s—…])[^\s—…]*?[^\W_][^\s—…]*")


class Role(StrEnum):
    """What a paragraph or a page is for. Only STORY is counted and judged as prose."""

    STORY = "story"
    TITLE = "title"
    AUTHOR = "author"
    DEDICATION = "dedication"
    IMPRINT = "imprint"
    BACK_MATTER = "back matter"
    NOTE = "note"
    RUNNING_HEAD = "running head"
    FOLIO = "folio"


@dataclass(frozen=True, slots=True, kw_only=True, order=True)
class Span:
    """Some characters of one page: ``page`` is its 1-based place in the book's pages."""

    page: int
    start: int
    end: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Paragraph:
    """One paragraph of a page, as characters ``start`` to ``end`` of the page's text.

    ``locator`` finds the paragraph in the file again ("line 14", "body 12", "table 1 row 2 cell 1
    paragraph 1"); ``style`` is the file's own name for its style, or "".
    """

    start: int
    end: int
    role: Role = Role.STORY
    style: str = ""
    locator: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Page:
    """A page (or an undivided spread) of the manuscript.

    ``number``   its 1-based place among the book's pages
    ``label``    what the author wrote above it ("Pages 4–5"), or ""
    ``folios``   the page numbers that the label gives, in order; empty where it gives none
    ``spread``   the number of the spread it lies on, or None where spreads are unknown or it has none
    ``role``     what most of the page is
    ``notes``    ranges inside STORY paragraphs that are notes to the illustrator, in brackets
    ``emphasis`` ranges set in italics, in order
    ``prose``    the text with all that is not story blanked by spaces: offsets stay the same
    """

    number: int
    text: str
    paragraphs: tuple[Paragraph, ...]
    label: str = ""
    folios: tuple[int, ...] = ()
    spread: int | None = None
    role: Role = Role.STORY
    notes: tuple[tuple[int, int], ...] = ()
    emphasis: tuple[tuple[int, int], ...] = ()

    # Worked out once: checks ask for it at every mark of a page that may be as long as a novel.
    prose: str = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        aside = [(p.start, p.end) for p in self.paragraphs if p.role is not Role.STORY]
        prose = blanked(self.text, (*aside, *self.notes)) if aside or self.notes else self.text
        object.__setattr__(self, "prose", prose)

    @property
    def words(self) -> int:
        """How many words of story the page has."""
        return count_words(self.prose)

    def span(self, start: int, end: int) -> Span:
        """The characters ``start`` to ``end`` of this page."""
        return Span(page=self.number, start=start, end=end)


@dataclass(frozen=True, slots=True, kw_only=True)
class Book:
    """A manuscript as read from its file.

    ``path``       the file, as the author named it
    ``title``      from the title page, the file's properties or the first heading; else ""
    ``paginated``  whether the author marked pages or spreads; if not, the story is one run
    ``remarks``    sentences about the file that the author should know (tracked changes, …)
    """

    path: str
    title: str
    pages: tuple[Page, ...]
    paginated: bool = True
    remarks: tuple[str, ...] = ()

    @property
    def words(self) -> int:
        """How many words of story the book has."""
        return sum(page.words for page in self.pages)

    @property
    def story_pages(self) -> tuple[Page, ...]:
        """The pages that carry the story, blank ones included."""
        return tuple(page for page in self.pages if page.role is Role.STORY)

    @property
    def spreads(self) -> tuple[int, ...]:
        """The numbers of the spreads that carry story, in the book's order, each once."""
        return tuple(dict.fromkeys(p.spread for p in self.story_pages if p.spread is not None))

    def page(self, number: int) -> Page:
        """The page at 1-based place ``number``."""
        return self.pages[number - 1]

    def quote(self, span: Span) -> str:
        """The characters that ``span`` covers."""
        return self.page(span.page).text[span.start : span.end]


def blanked(text: str, ranges: tuple[tuple[int, int], ...]) -> str:
    """``text`` with every range overwritten by as many spaces; line ends stay."""
    characters = list(text)
    for start, end in ranges:
        for at in range(start, min(end, len(characters))):
            if characters[at] != "\n":
                characters[at] = " "
    return "".join(characters)


def counted_words(text: str) -> Iterator[re.Match[str]]:
    """The words of a text, as a printer or an author counts them."""
    return _COUNTED_WORD.finditer(text)


def count_words(text: str) -> int:
    """How many words a text has."""
    return sum(1 for _ in counted_words(text))
