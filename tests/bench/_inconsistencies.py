"""Inconsistencies to plant, one at a time: by changing one of a text's own words or marks, or in sentences added.

The sentences stand in ``inconsistencies.md``. They are spread over the pages of a story, once all alike
(which must stay silent) and once with one of them done another way.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path

from proofkit.book import Book, Page, Role
from proofkit.settings import English
from proofkit.words.english import english_of
from proofkit.words.vocabulary import vocabulary_of
from tests.bench._slips import Slip, planted

SENTENCES = Path(__file__).with_name("inconsistencies.md")
_FORMS = re.compile(r"^(?:`([^`]+)`|(.+?)) \| (?:`([^`]+)`|(.+))$")
_QUOTATION_MARKS = '‘“"'
_MARKED = {"“": '"', "”": '"'}


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    """Sentences in which one thing is done the usual way, and the odd way to do it."""

    kind: str
    usual: str
    odd: str
    sentences: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Inconsistency:
    """A book that agrees with itself, and the same book with one place done another way.

    ``start`` to ``end`` of ``page`` is the odd place in the changed book, ``usual`` how it stood before.
    ``own`` says that the book's own words were changed, not sentences added.
    """

    kind: str
    own: bool
    before: Book
    after: Book
    page: int
    start: int
    end: int
    usual: str


def items() -> Iterator[Item]:
    """Every item of the file, in its order."""
    kind = ""
    for block in SENTENCES.read_text("utf-8").split("\n\n"):
        lines = block.strip().split("\n")
        if lines[0].startswith("## "):
            kind = lines[0].removeprefix("## ")
        elif kind and (found := _FORMS.match(lines[0])):
            usual, odd = found[1] or found[2], found[3] or found[4]
            yield Item(kind=kind, usual=usual, odd=odd, sentences=tuple(lines[1:]))


def added(book: Book, item: Item, odd_one: int) -> Inconsistency | None:
    """The book with the item's sentences, and with the ``odd_one``-th of them the odd way.

    None where the book has too few pages of story to spread them over, or where it has the odd form
    itself. The items are in British English, so a book in American English is not taken either.
    """
    british = english_of(book, vocabulary_of(book)) is English.BRITISH
    if not british or not _agrees(book, item):
        return None
    pages = [page.number for page in book.pages if _takes_a_sentence(page)]
    if len(pages) < len(item.sentences):
        return None
    step = len(pages) // len(item.sentences)
    odd_page = pages[odd_one * step]
    before = book
    for number, sentence in zip(pages[::step], item.sentences, strict=False):
        before, at = _with_sentence(before, number, sentence.replace("{}", item.usual))
        if number == odd_page:
            start = at + sentence.index("{}")
    slip = _slip(odd_page, start, start + len(item.usual), item.odd)
    return _inconsistency(item.kind, before, slip, own=False)


def swapped(book: Book) -> Iterator[Inconsistency]:
    """Every name and mark of the book's own that could stand otherwise in one place."""
    for page in book.story_pages:
        for kind, slip in (*_names(book, page), *_marks(page)):
            yield _inconsistency(kind, book, slip, own=True)


def _agrees(book: Book, item: Item) -> bool:
    """Whether the book has nothing of the odd form itself: not the words, not another dash or mark."""
    prose = "\n".join(page.prose for page in book.pages)
    odd = item.odd[0] if item.odd[0] in _QUOTATION_MARKS else item.odd
    dashes = set(re.findall(r"—|–|--| - ", prose)) if item.kind == "dash" else set()
    return odd not in prose and dashes <= {item.usual.strip()}


def _takes_a_sentence(page: Page) -> bool:
    last = page.paragraphs[-1] if page.paragraphs else None
    whole = last is not None and last.role is Role.STORY and last.end == len(page.text)
    return whole and page.text.endswith((".", "!", "?", ".”", "!”", "?”")) and "\n" not in (
        page.text[last.start :] if last else ""
    )  # fmt: skip


def _with_sentence(book: Book, number: int, sentence: str) -> tuple[Book, int]:
    page = book.page(number)
    at = len(page.text) + 1
    last = replace(page.paragraphs[-1], end=at + len(sentence))
    longer = replace(page, text=f"{page.text} {sentence}", paragraphs=(*page.paragraphs[:-1], last))
    return replace(book, pages=(*book.pages[: number - 1], longer, *book.pages[number:])), at


def _inconsistency(kind: str, book: Book, slip: Slip, *, own: bool) -> Inconsistency:
    return Inconsistency(
        kind=kind,
        own=own,
        before=book,
        after=planted(book, slip),
        page=slip.page,
        start=slip.start,
        end=slip.start + len(slip.wrong),
        usual=book.page(slip.page).text[slip.start : slip.end],
    )


def _slip(page: int, start: int, end: int, wrong: str) -> Slip:
    return Slip(page=page, start=start, end=end, wrong=wrong, reach=(start, start + len(wrong)))


def _names(book: Book, page: Page) -> Iterator[tuple[str, Slip]]:
    for use in vocabulary_of(book).names:
        for span in use.spans if use.count >= 3 and len(use.word) > 4 else ():
            if span.page == page.number and book.quote(span).istitle():
                for kind, odd in _misspelt(book.quote(span)):
                    yield kind, _slip(span.page, span.start, span.end, odd)


def _misspelt(name: str) -> Iterator[tuple[str, str]]:
    """A name as a tired hand writes it once: a letter doubled, one of two dropped, a vowel for another."""
    if doubled := re.search(r"(?i)([b-df-hj-np-tv-z])\1", name):
        yield "own name, a letter dropped", name[: doubled.start()] + name[doubled.start() + 1 :]
    elif single := re.search(r"(?<=[aeiou])[lmnrst](?=[aeiou])", name):
        yield "own name, a letter doubled", name[: single.end()] + single[0] + name[single.end() :]
    if vowel := re.search(r"(?<=[a-z])[ae](?=[lnr])", name):
        other = {"a": "e", "e": "a"}[vowel[0]]
        yield "own name, another vowel", name[: vowel.start()] + other + name[vowel.end() :]


def _marks(page: Page) -> Iterator[tuple[str, Slip]]:
    for found in re.finditer(r"[“”]", page.prose):
        slip = _slip(page.number, found.start(), found.end(), _MARKED[found[0]])
        yield "own mark, straight for curly", slip
    for found in re.finditer(r"“([^“”\n]{3,80})”", page.prose):
        slip = _slip(page.number, found.start(), found.end(), f"‘{found[1]}’")
        yield "own marks, single for double", slip
    for found in re.finditer(r"(?<=[a-z]) – (?=[a-z])", page.prose):
        yield "own dash, another shape", _slip(page.number, found.start(), found.end(), "—")
    for found in re.finditer(r"(?<=[a-z])…", page.prose):
        yield "own ellipsis, three points", _slip(page.number, found.start(), found.end(), "...")
    for found in re.finditer(r"(?<=[a-z]{2}\.) (?=[A-Z])", page.prose):
        yield "own space after a stop, two", _slip(page.number, found.start(), found.end(), "  ")
    for found in re.finditer(r"\bM(?:r|rs)(?= [A-Z])", page.prose):
        yield (
            "own title, with a point",
            _slip(page.number, found.start(), found.end(), f"{found[0]}."),
        )
