"""Which ending of -ise and -ize a book has, and the words that have one only."""

from __future__ import annotations

import pytest

from proofkit.analysis import Analysis
from proofkit.habits.endings import FORMS, MATTER, ending_of, usage
from proofkit.settings import English
from proofkit.words.vocabulary import vocabulary_of
from tests.marked import book_of

# Oxford Dictionaries' list of words that end in -ise everywhere, and those that end in -yse in Britain.
ALWAYS_ISE = """advertise advise apprise chastise comprise compromise despise devise disguise excise exercise
improvise incise promise revise supervise surmise surprise televise prise"""
ALWAYS_YSE = "analyse breathalyse catalyse dialyse electrolyse hydrolyse paralyse psychoanalyse"
ALWAYS_IZE = "size prize capsize seize"


@pytest.mark.parametrize("word", f"{ALWAYS_ISE} {ALWAYS_YSE} {ALWAYS_IZE}".split())
def test_words_with_one_ending_are_no_part_of_it(word: str) -> None:
    for form in (word, word + "d", word + "s", word[:-1] + "ing"):
        assert ending_of(form) is None


@pytest.mark.parametrize(
    ("word", "ending"),
    [("realised", "-ise"), ("Apologize", "-ize"), ("organisation", "-ise"), ("ORGANIZING", "-ize")],
)
def test_words_with_both(word: str, ending: str) -> None:
    assert ending_of(word) == ending


def test_every_place_in_the_books_order_and_no_names() -> None:
    book = book_of("He realised it. We met Mr Realise.", "She organised it, and realized why.")
    own = usage(book, Analysis(english=English.BRITISH, vocabulary=vocabulary_of(book)))
    assert own.matter == MATTER
    assert {form: [book.quote(s) for s in spans] for form, spans in own.places.items()} == {
        "-ise": ["realised", "organised"],
        "-ize": ["realized"],
    }
    assert set(own.places) <= set(FORMS)
