from __future__ import annotations

from dataclasses import replace

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from proofkit.book import Book, Role
from proofkit.reading.formulas import flesch_kincaid_grade, flesch_reading_ease
from proofkit.reading.measure import BookReading, measure
from tests.marked import book_of

TEN = "The fat cat sat on the mat and was glad."  # ten words, ten syllables


def pages_of_tens(*tens: int) -> Book:
    """A book whose pages have so many sentences of ten words each."""
    return book_of(*(" ".join([TEN] * count) for count in tens))


def runs(book: Book) -> list[tuple[int, int] | None]:
    return [page.run for page in measure(book).pages]


def test_a_page_and_its_book() -> None:
    reading = measure(book_of("Up went the umbrella! “Come back!” said Ann."))
    page = reading.pages[0]
    assert (page.page, page.words, page.sentences, page.longest_sentence) == (1, 8, 2, 4)
    assert page.mean_sentence == 4.0
    assert page.syllables_per_word == pytest.approx(10 / 8)
    assert (reading.words, reading.sentences, reading.longest_sentence) == (8, 2, 4)


def test_a_long_page_has_its_own_scores() -> None:
    reading = measure(pages_of_tens(10, 1))
    page = reading.pages[0]
    counts = {"words": 100, "sentences": 10, "syllables": 100}
    assert page.run is None
    assert page.flesch_reading_ease == flesch_reading_ease(**counts)
    assert page.flesch_kincaid_grade == flesch_kincaid_grade(**counts)


def test_a_page_of_99_words_is_scored_with_its_neighbour() -> None:
    almost = " ".join([TEN] * 9) + " The cat sat on the mat and was glad."
    book = book_of(almost, TEN)
    assert measure(book).pages[0].words == 99
    assert runs(book) == [(1, 2), (1, 2)]


def test_the_run_is_the_smallest_with_the_page_in_the_middle() -> None:
    assert runs(pages_of_tens(4, 4, 4, 4, 4)) == [(1, 3), (1, 3), (2, 4), (3, 5), (3, 5)]


def test_a_long_neighbour_makes_the_run_shorter() -> None:
    assert runs(pages_of_tens(1, 9, 1, 1)) == [(1, 2), (1, 2), (2, 3), (2, 4)]


def test_the_score_belongs_to_the_run() -> None:
    hard = "The extraordinarily temperamental caterpillar disappeared."
    reading = measure(book_of(" ".join([TEN] * 9), " ".join([hard] * 2)))
    first, second = reading.pages
    assert first.flesch_kincaid_grade == second.flesch_kincaid_grade == reading.flesch_kincaid_grade
    assert first.syllables_per_word < second.syllables_per_word


def test_a_book_under_100_words_has_no_score() -> None:
    reading = measure(pages_of_tens(3, 3, 3))
    assert reading.flesch_reading_ease is None
    assert reading.flesch_kincaid_grade is None
    assert [(p.flesch_reading_ease, p.flesch_kincaid_grade, p.run) for p in reading.pages] == [
        (None, None, None)
    ] * 3


def test_blank_pages_are_noughts_and_empty_books_do_no_harm() -> None:
    blank = measure(pages_of_tens(10, 0)).pages[1]
    assert (blank.words, blank.sentences, blank.mean_sentence, blank.run) == (0, 0, 0.0, None)
    assert blank.flesch_reading_ease is None
    assert measure(Book(path="empty", title="", pages=())).words == 0


def test_pages_that_are_not_story_are_left_out() -> None:
    book = pages_of_tens(1, 5, 5)
    title, *story = book.pages
    reading = measure(replace(book, pages=(replace(title, role=Role.TITLE), *story)))
    assert [page.page for page in reading.pages] == [2, 3]
    assert reading.words == 100
    assert reading.pages[0].run == (2, 3)


def test_notes_are_not_counted() -> None:
    book = book_of("Pip ran home. [Art: a very long road] Then he slept.")
    noted = replace(book, pages=(replace(book.pages[0], notes=((14, 37),)),))
    assert measure(noted).words == 6
    assert measure(noted).sentences == 2


def test_words_on_spreads() -> None:
    book = pages_of_tens(1, 2, 3)
    spreads = (1, 2, 2)
    pages = tuple(replace(p, spread=s) for p, s in zip(book.pages, spreads, strict=True))
    reading = measure(replace(book, pages=pages))
    assert [(s.spread, s.words, s.pages) for s in reading.spreads] == [
        (1, 10, (1,)),
        (2, 50, (2, 3)),
    ]
    assert measure(book).spreads == ()


def test_a_reading_survives_json() -> None:
    reading = measure(pages_of_tens(4, 4, 4))
    assert msgspec.json.decode(msgspec.json.encode(reading), type=BookReading) == reading


@given(st.lists(st.integers(0, 12), max_size=12))
def test_every_run_has_100_words_and_none_shorter_would_do(tens: list[int]) -> None:
    reading = measure(pages_of_tens(*tens))
    words = [page.words for page in reading.pages]
    assert sum(words) == reading.words
    for page in reading.pages:
        if page.run is None:
            assert page.words >= 100 or page.flesch_reading_ease is None
            continue
        first, last = page.run
        assert first <= page.page <= last
        assert sum(words[first - 1 : last]) >= 100
        shorter = last - first
        starts = range(max(1, page.page - shorter + 1), page.page + 1)
        assert all(
            sum(words[at - 1 : at - 1 + shorter]) < 100
            for at in starts
            if at + shorter - 1 <= len(words)
        )
