from __future__ import annotations

import pytest

from proofkit.words.vocabulary import opens_sentence, vocabulary_of
from tests.marked import book_of


def test_a_name_has_capitals_where_no_sentence_asks_for_them() -> None:
    words = vocabulary_of(
        book_of("The goose saw Tilly. Goose feathers flew.", "Where was Tilly’s hat?")
    )
    assert words.is_name("Tilly")
    assert not words.is_name("goose")
    assert words.count("tilly") == 2


def test_every_place_is_kept_in_the_order_of_the_book() -> None:
    book = book_of("Up, up, up went Tilly’s kite.", "Up went the goose.")
    use = vocabulary_of(book).use("UP")
    assert use is not None
    assert [book.quote(span) for span in use.spans] == ["Up", "up", "up", "Up"]
    assert (use.lower, use.usual_form, use.pages) == (2, "up", (1, 2))


@pytest.mark.parametrize(
    "before",
    ["", "It rained. ", "“Stop!” ", "She said, “", "It rained\n", "Then – ", "Who? … (", "One: "],
)
def test_here_a_capital_says_nothing(before: str) -> None:
    assert opens_sentence(before + "Goose", len(before))


@pytest.mark.parametrize("before", ["The ", "It rained, and ", "a very, very ", "“Stop,” "])
def test_here_a_capital_makes_a_name(before: str) -> None:
    assert not opens_sentence(before + "Goose", len(before))
