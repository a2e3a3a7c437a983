"""How numbers, dates, times and OK are read, and written in another form."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.habits import (
    clock_times,
    dates,
    halves_of_day,
    numbers,
    oclock,
    okay,
    ordinals,
    thousands,
    times_of_day,
)
from proofkit.habits._number_words import cardinal, ordinal, ordinal_in_figures, value
from proofkit.habits.matters import matter_named
from proofkit.habits.usage import Usage
from proofkit.settings import English
from proofkit.words.vocabulary import vocabulary_of
from tests.marked import book_of

HABITS = (
    numbers,
    clock_times,
    ordinals,
    thousands,
    dates,
    times_of_day,
    oclock,
    halves_of_day,
    okay,
)


def places(usage: Callable[[Book, Analysis], Usage], text: str) -> dict[str, list[str]]:
    book = book_of(text)
    analysis = Analysis(english=English.BRITISH, vocabulary=vocabulary_of(book))
    found = usage(book, analysis).places
    return {form: [book.quote(span) for span in spans] for form, spans in found.items()}


@pytest.mark.parametrize("habit", HABITS, ids=lambda habit: habit.MATTER)
def test_each_matter_can_be_decided_by_its_name(habit: object) -> None:
    matter = matter_named(habit.MATTER)  # type: ignore[attr-defined] # a module with the three names
    assert matter is not None
    assert len(set(matter.forms)) == len(matter.forms) > 1


def test_numbers_that_count_things_only() -> None:
    text = "Three mice, 4 frogs and bus 42. She was 3 years old at 7 pm on 3 May, and ate 2 kg."
    assert places(numbers.usage, text) == {"in words": ["Three"], "in figures": ["4"]}


def test_one_is_a_pronoun_too() -> None:
    assert places(numbers.usage, "One of them had one hat.") == {}


def test_ordinals_that_are_no_dates_and_no_moments() -> None:
    text = "The 3rd frog waited a second on the 4th of May. The second frog did not."
    assert places(ordinals.usage, text) == {"in figures": ["3rd"], "in words": ["second"]}


def test_years_have_no_comma() -> None:
    text = "In 1984 there were 1,200 geese and 3000 ducks."
    assert places(thousands.usage, text) == {
        "with a comma": ["1,200"],
        "without a comma": ["3000"],
    }


def test_a_price_and_a_length_are_no_times() -> None:
    text = "At 5.30 it cost £5.30, and was 5.30 metres long. At 6:15 it sank."
    assert places(times_of_day.usage, text) == {"5.30": ["5.30"], "5:30": ["6:15"]}


@pytest.mark.parametrize(
    ("written", "form", "better"),
    [
        ("7.30AM", "7 p.m.", "7.30 a.m."),
        ("7 p.m.", "7pm", "7pm"),
        ("11 am", "7 PM", "11 AM"),
    ],
)
def test_halves_of_the_day(written: str, form: str, better: str) -> None:
    assert halves_of_day.in_form(written, form) == better


def test_the_stop_of_a_sentence_is_not_the_letters_own() -> None:
    assert places(
        halves_of_day.usage, "She was back at 9 pm. He was back at 9 p.m. They slept."
    ) == {
        "7 pm": ["9 pm"],
        "7 p.m.": ["9 p.m."],
    }


@pytest.mark.parametrize("form", dates.FORMS)
@pytest.mark.parametrize("written", ["3 May", "3rd May", "the 3rd of May", "May 3", "May 3rd"])
def test_dates_in_every_form(written: str, form: str) -> None:
    assert dates.in_form(written, form) == form


def test_ok_has_a_capital_where_it_opens_a_sentence() -> None:
    book = book_of('"OK," she said. "It is OK."')
    analysis = Analysis(english=English.BRITISH, vocabulary=vocabulary_of(book))
    first, second = okay.usage(book, analysis).places["OK"]
    assert okay.in_form(book, first, "okay") == "Okay"
    assert okay.in_form(book, second, "okay") == "okay"
    assert okay.decided_by(["bedtime", "Okay"]) == "okay"
    assert okay.decided_by(["bedtime"]) is None


def test_hours_in_both_forms() -> None:
    assert oclock.in_form("seven", "in figures") == "7"
    assert oclock.in_form("12", "in words") == "twelve"
    assert oclock.in_form("13", "in words") == "13"


@pytest.mark.parametrize("number", range(1, 100))
def test_every_number_is_read_as_it_is_written(number: int) -> None:
    assert value(cardinal(number)) == number
    assert ordinals.in_form(ordinal(number), "in figures") == ordinal_in_figures(number)
    assert ordinals.in_form(ordinal_in_figures(number), "in words") == ordinal(number)


@pytest.mark.parametrize(
    ("words", "figures"),
    [
        ("half past five", "5.30"),
        ("quarter to one", "12.45"),
        ("twenty-five to nine", "8.35"),
        ("five past twelve", "12.05"),
    ],
)
def test_times_in_words_and_in_figures(words: str, figures: str) -> None:
    assert clock_times.in_form(words, "in figures") == figures
    assert clock_times.in_form(figures, "in words") == words


def test_what_is_no_time() -> None:
    text = "Five to ten mice left at half past six, from five to seven. It was 6.30 pm, or 6.23."
    assert places(clock_times.usage, text) == {"in words": ["half past six"]}


def test_great_numbers_in_words() -> None:
    assert cardinal(100) == "one hundred"
    assert cardinal(342) == "three hundred and forty-two"
    assert cardinal(1_001) == "one thousand and one"
    assert [ordinal_in_figures(n) for n in (11, 21, 112)] == ["11th", "21st", "112th"]
