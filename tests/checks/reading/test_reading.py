"""What the marked examples can't show: other age bands, spreads, manuscripts without pages."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace

import pytest

from proofkit.analysis import Analysis
from proofkit.book import Book, Role
from proofkit.checks.reading import book_length, heavy_in_a_row, heavy_spread, long_sentence
from proofkit.issue import Issue
from proofkit.settings import English, Settings
from proofkit.words.vocabulary import vocabulary_of
from tests.marked import book_of

SENTENCE = "Ada found a door in the hedge and went in. "  # ten words

SIGHTS = [
    "red hen",
    "blue boat",
    "green gate",
    "brass bell",
    "tin drum",
    "fat toad",
    "lost glove",
    "wet dog",
    "paper hat",
    "steep hill",
    "round moon",
    "long ladder",
    "cold spoon",
    "grey goose",
    "loud crow",
    "small shoe",
    "new kite",
]


def one_sentence(sights: int) -> str:
    """One sentence with four words to each sight: "Ada saw a red hen and a blue boat"."""
    return f"Ada saw {' and '.join(f'a {sight}' for sight in SIGHTS[:sights])}."


OTHER_BREATHLESS = (
    "Then Ben ran down the lane, over the bridge, under the arch, round the church, through the market, past "
    "the school, between two buses, up forty steps, along a wall, across the yard, behind the dairy, into a "
    "barn, out of its back window, off towards the river, and straight home to his tea."
)

Find = Callable[[Book, Analysis, Settings], Iterable[Issue]]


def found(find: Find, book: Book, band: str = "picture") -> list[Issue]:
    analysis = Analysis(english=English.BRITISH, vocabulary=vocabulary_of(book))
    return list(find(book, analysis, Settings(age_band=band)))


def book_of_words(*tens: int) -> Book:
    return book_of(*(SENTENCE * count for count in tens))


@pytest.mark.parametrize(
    ("band", "words", "speaks"),
    [
        ("board", 600, False),
        ("board", 610, True),
        ("picture", 2000, False),
        ("picture", 2010, True),
        ("early-reader", 2010, False),
        ("early-reader", 4010, True),
        ("early-reader", 20, True),
        ("chapter", 2000, False),
        ("chapter", 1990, True),
        ("middle-grade", 9990, True),
        ("middle-grade", 10000, False),
    ],
)
def test_length_beside_the_band(band: str, words: int, *, speaks: bool) -> None:
    book = book_of_words(words // 10)
    assert book.words == words
    assert bool(found(book_length.find, book, band)) == speaks


def test_a_book_without_a_word_of_story_is_not_too_short() -> None:
    assert not found(book_length.find, book_of("", ""), "chapter")


def test_the_two_pages_of_a_spread_are_counted_together() -> None:
    book = book_of_words(1, 1, 6, 6, 1, 1)
    pages = tuple(replace(page, spread=(page.number + 1) // 2) for page in book.pages)
    assert not found(heavy_spread.find, book)
    (issue,) = found(heavy_spread.find, replace(book, pages=pages))
    assert issue.span.page == 3
    assert "120 words on this spread" in issue.message


def test_other_heavy_spreads_are_named_with_the_heaviest() -> None:
    (issue,) = found(heavy_spread.find, book_of_words(2, 10, 2, 12, 2, 2, 11))
    assert issue.span.page == 4
    assert [span.page for span in issue.related] == [2, 7]


def test_a_spread_is_judged_by_its_band() -> None:
    book = book_of_words(2, 2, 9, 2)
    assert found(heavy_spread.find, book, "picture")
    assert not found(heavy_spread.find, book, "early-reader")


def test_without_pages_no_page_is_heavy() -> None:
    assert not found(heavy_spread.find, replace(book_of_words(30), paginated=False))


def test_pages_that_are_not_story_are_not_judged() -> None:
    book = book_of_words(2, 2, 2, 20)
    *story, last = book.pages
    assert found(heavy_spread.find, book)
    noted = replace(book, pages=(*story, replace(last, role=Role.BACK_MATTER)))
    assert not found(heavy_spread.find, noted)


def test_a_sentence_is_judged_by_its_band() -> None:
    book = book_of(f"Morning came. {one_sentence(10)}")
    (issue,) = found(long_sentence.find, book, "board")
    assert issue.message.startswith("a sentence of 41 words")
    assert issue.quote == "Ada saw a red"
    assert not found(long_sentence.find, book, "picture")


def test_of_a_book_far_too_long_only_the_length_is_said() -> None:
    long_one = one_sentence(len(SIGHTS)) + " "
    book = book_of(long_one + SENTENCE * 30, SENTENCE * 180)
    assert len(found(book_length.find, book)) == 1
    assert not found(heavy_spread.find, book)
    assert not found(long_sentence.find, book)
    assert found(long_sentence.find, book_of(long_one))


def test_a_spread_is_asked_about_once() -> None:
    """A page both heavy and with a long sentence has the graver query; the other page its own."""
    breathless = f"{one_sentence(len(SIGHTS))} "  # 69 words
    heavy_and_long = breathless + SENTENCE * 15
    book = book_of(
        SENTENCE * 2, heavy_and_long, SENTENCE * 2, SENTENCE * 2, OTHER_BREATHLESS, SENTENCE * 2
    )
    (heavy,) = found(heavy_spread.find, book)
    assert (heavy.span.page, heavy.related) == (2, ())
    (long,) = found(long_sentence.find, book)
    assert (long.span.page, long.related) == (5, ())


def test_no_page_has_two_queries_of_this_family() -> None:
    lengths = (2, 3, 4, 5, 4, 2, 2, 9, 2, 2, 2, 2)
    texts = [SENTENCE * length for length in lengths]
    texts[4] = f"{one_sentence(16)} "
    book = book_of(*texts)
    checks = (book_length, heavy_in_a_row, heavy_spread, long_sentence)
    issues = [issue for check in checks for issue in found(check.find, book)]
    assert len(issues) == 3
    pages = [span.page for issue in issues for span in (issue.span, *issue.related)]
    assert len(pages) == len(set(pages))


def test_a_book_far_too_short_for_its_band_is_asked_about_once() -> None:
    book = book_of(f"{one_sentence(len(SIGHTS))} {SENTENCE}")
    assert found(book_length.find, book, "middle-grade")
    assert not found(long_sentence.find, book, "middle-grade")


def test_the_row_is_pointed_at_from_its_first() -> None:
    (issue,) = found(heavy_in_a_row.find, book_of_words(2, 2, 4, 5, 4, 2, 2, 2))
    assert issue.span.page == 3
    assert [span.page for span in issue.related] == [4, 5]
    assert "3 heavy pages in a row" in issue.message
