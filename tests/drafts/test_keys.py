"""What must not change an issue's key, and what must."""

from __future__ import annotations

import random
import re
import unicodedata
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from functools import cache
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from proofkit.analysis import Analysis
from proofkit.book import Book, Page, Span
from proofkit.checks.check import Need
from proofkit.checks.registry import all_checks
from proofkit.issue import Issue, Tier, issue_at, matter_of, with_keys
from proofkit.ranking import without_rivals
from proofkit.readers.read import read
from proofkit.settings import English, Settings
from proofkit.words.vocabulary import vocabulary_of
from tests.bench._author import stories
from tests.bench._texts import CORPUS, NOVELS, excerpts
from tests.drafts.making import book_of

EXAMPLES = Path(__file__).parents[2] / "examples"
FORMATS = ("md", "docx", "odt", "rtf", "txt")
PAGES = 400
_SPOT = re.compile(r"[^\W_]+|(?<=[^\W_])[,.!?;]|(?<=,) ")
_GAPS = ("  ", "\t", " \n", " " * 60, "\n\n", "\N{NO-BREAK SPACE} ", " " * 700)


@cache
def story_pages() -> tuple[str, ...]:
    """All pages of the project's stories that have more than a few words."""
    pages = (page.text for path in stories() for page in read(path).story_pages)
    return tuple(text for text in pages if len(text.split()) > 5)


def spotted(book: Book, spots: Iterable[Span]) -> tuple[Issue, ...]:
    return with_keys(
        book,
        [
            issue_at(book, spot, check="a/b", tier=Tier.ERROR, message="a slip", confidence=0.9)
            for spot in spots
        ],
    )


def spots_of(page: Page) -> Iterator[Span]:
    """Words, marks and spaces of a page, wherever a slip could be."""
    for found in _SPOT.finditer(page.text):
        yield page.span(*found.span())


def matters(book: Book, issues: Sequence[Issue]) -> Counter[str]:
    return Counter(matter_of(book, issue) for issue in issues)


@settings(max_examples=30, deadline=None)
@given(st.lists(st.integers(0, 150), min_size=2, max_size=12, unique=True), st.randoms())
def test_the_order_of_pages_does_not_change_a_key(
    numbers: list[int], chance: random.Random
) -> None:
    texts = [story_pages()[number] for number in numbers]
    book = book_of(*texts)
    shuffled = list(texts)
    chance.shuffle(shuffled)
    other = book_of(*shuffled)
    here, there = (
        spotted(each, (spot for page in each.pages for spot in spots_of(page)))
        for each in (book, other)
    )
    assert sorted(issue.key for issue in here) == sorted(issue.key for issue in there)
    alone = matters(book, here)

    def places(where: Book, issues: Sequence[Issue]) -> dict[str, tuple[str, int]]:
        return {
            issue.key: (where.page(issue.span.page).text, issue.span.start)
            for issue in issues
            if alone[matter_of(where, issue)] == 1
        }

    assert places(book, here) == places(other, there)


@settings(max_examples=60, deadline=None)
@given(st.integers(0, 150), st.randoms())
def test_runs_of_white_space_do_not_change_a_key(number: int, chance: random.Random) -> None:
    text = story_pages()[number]
    parts = re.split(r"(\s+)", text)
    words, wide, at, spots = [], "", 0, []
    for part in parts:
        new = part if part.strip() or not part else chance.choice((part, *_GAPS))
        if part.strip():
            spots.append(((at, at + len(part)), (len(wide), len(wide) + len(part))))
        words.append(part)
        at, wide = at + len(part), wide + new
    one, other = book_of(text), book_of(wide)
    here = spotted(one, (Span(page=1, start=s, end=e) for (s, e), _ in spots))
    there = spotted(other, (Span(page=1, start=s, end=e) for _, (s, e) in spots))
    assert [issue.key for issue in here] == [issue.key for issue in there]


def test_a_wider_gap_at_fault_keeps_its_key() -> None:
    keys = {
        spotted(book_of(f"the grey{gap}goose sat"), [Span(page=1, start=8, end=8 + len(gap))])[
            0
        ].key
        for gap in ("  ", "   ", "\t\t", " " * 40)
    }
    assert len(keys) == 1


def test_the_way_a_file_spells_an_accent_does_not_change_a_key() -> None:
    text = "Una caf\u00e9 se\u00f1ora ni\u00f1o mam\u00e1."
    other = unicodedata.normalize("NFD", text)
    here, there = (
        spotted(book_of(each), (Span(page=1, start=m.start(), end=m.end()) for m in words))
        for each in (text, other)
        for words in [re.finditer(r"\S+", each)]
    )
    assert len(other) > len(text)
    assert [issue.key for issue in here] == [issue.key for issue in there]


def found_in(path: Path) -> set[str]:
    """The keys of all that the checks of the text find in a file."""
    book = read(path)
    analysis = Analysis(english=English.BRITISH, vocabulary=vocabulary_of(book))
    own = Settings(english=English.BRITISH)
    checks = [check for check in all_checks() if check.needs <= {Need.TEXT}]
    found = [issue for check in checks for issue in check.find(book, analysis, own)]
    return {issue.key for issue in with_keys(book, without_rivals(found))}


@pytest.mark.slow
def test_the_format_of_the_file_does_not_change_a_key() -> None:
    first, *others = (found_in(EXAMPLES / f"the-borrowed-wind.{ending}") for ending in FORMATS)
    assert len(first) >= 8
    assert others == [first] * len(others)


def assert_no_key_twice(texts: Sequence[str]) -> None:
    """Every word, mark and gap of a book a slip of its own: as many keys as slips."""
    book = book_of(*texts)
    issues = spotted(book, (spot for page in book.pages for spot in spots_of(page)))
    assert len(issues) > 30 * len(texts)
    assert len({issue.key for issue in issues}) == len(issues)


@pytest.mark.slow
def test_no_two_slips_of_the_stories_share_a_key() -> None:
    assert_no_key_twice(story_pages())


@pytest.mark.slow
@pytest.mark.skipif(not CORPUS.exists(), reason="the novels are not beside the project")
def test_no_two_slips_share_a_key_in_a_book_of_400_pages() -> None:
    pages = [page.text for book in excerpts(NOVELS[:2], PAGES, seed=1) for page in book.pages]
    texts = [text for text in pages if len(text.split()) > 60][:PAGES]
    assert len(texts) == PAGES
    assert_no_key_twice(texts)
