"""In which tense a story is told, and which of its verbs stand in the present.

Only finite verbs outside speech count. What a verb can be is asked of its form: *put*, *let* and *read*
may be either tense and say nothing.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache

from proofkit.analysis import Analysis, Token
from proofkit.book import Book, Page
from proofkit.words.forms import past_forms
from proofkit.words.quotations import Quotations, quotations_of

_LEAST_PAST = 12  # verbs; with fewer, a book has no tense of its own
_SHARE_PAST = 0.85
_NOW = frozenset({"will", "can", "shall", "ca", "wo"})
_BOTH = frozenset({"must", "ought", "need", "dare", "used"})


@dataclass(frozen=True, slots=True, kw_only=True)
class PageVerbs:
    """The places of a page's finite verbs outside speech, by what tense their forms are."""

    past: tuple[int, ...]
    present: tuple[int, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Narrative:
    """``pages`` runs beside the book's pages."""

    pages: tuple[PageVerbs, ...]

    @property
    def told_in_past(self) -> bool:
        """Whether nearly all verbs of the story are in the past."""
        past = sum(len(page.past) for page in self.pages)
        present = sum(len(page.present) for page in self.pages)
        return past >= _LEAST_PAST and past > _SHARE_PAST * (past + present)


# The analysis is that of the book, and only one book is looked at at a time.
@lru_cache(maxsize=1)
def _cached(key: _ById) -> Narrative:
    quotations = quotations_of(key.book)
    return Narrative(
        pages=tuple(
            _verbs(page, key.analysis.page(page.number).tokens, quotations)
            for page in key.book.pages
        )
    )


class _ById:
    """A book with its analysis, the same as another if they are the same objects."""

    def __init__(self, book: Book, analysis: Analysis) -> None:
        self.book, self.analysis = book, analysis

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _ById) and self.analysis is other.analysis

    def __hash__(self) -> int:
        return id(self.analysis)


def narrative_of(book: Book, analysis: Analysis) -> Narrative:
    """The story's verbs."""
    return _cached(_ById(book, analysis))


def unsure_of_speech(page: Page, quotations: Quotations) -> bool:
    """Whether a quotation mark is missing on the page, so that one can't tell where somebody speaks."""
    return page.prose.count('"') % 2 == 1 or any(
        not quotation.whole and any(part.page == page.number for part in quotation.parts)
        for quotation in quotations.speech
    )


def repeated_sentences(book: Book, analysis: Analysis) -> frozenset[str]:
    """Sentences that stand in the book more than once, in lower case: refrains."""
    counts = Counter(
        book.page(number).prose[sentence.start : sentence.end].lower()
        for number in range(1, len(book.pages) + 1)
        for sentence in analysis.page(number).sentences
    )
    return frozenset(text for text, count in counts.items() if count > 1)


def _verbs(page: Page, tokens: Sequence[Token], quotations: Quotations) -> PageVerbs:
    places = list(_finite(page, tokens, quotations))
    return PageVerbs(
        past=tuple(at for at, past in places if past),
        present=tuple(at for at, past in places if not past),
    )


def _finite(
    page: Page, tokens: Sequence[Token], quotations: Quotations
) -> Iterator[tuple[int, bool]]:
    for at, token in enumerate(tokens):
        word = token.text.lower()
        if token.tag not in ("VBD", "VBZ", "VBP", "MD") or word in _BOTH or not word.isalpha():
            continue
        past = token.tag == "VBD" or (token.tag == "MD" and word not in _NOW)
        either = token.tag in ("VBP", "VBZ") and word in past_forms()
        if not either and not quotations.speaks(page.number, token.start):
            yield at, past
