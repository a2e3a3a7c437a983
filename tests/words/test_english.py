"""The English of a book by its spellings, its words and its marks."""

from __future__ import annotations

import pytest

from proofkit.settings import English
from proofkit.words.english import Votes, english_of, votes
from proofkit.words.vocabulary import vocabulary_of
from tests.marked import book_of

BRITISH, AMERICAN = English.BRITISH, English.AMERICAN


def votes_of(text: str) -> Votes:
    book = book_of(text)
    return votes(book, vocabulary_of(book))


@pytest.mark.parametrize(
    ("text", "english"),
    [
        ("Her neighbours had a grey cat.", BRITISH),
        ("Her neighbors had a gray cat.", AMERICAN),
        ("A boat went round the bay.", BRITISH),
        ("The colour of the gray cat.", BRITISH),
        ("Then Mom said the cat was grey.", AMERICAN),
        ("We met Miss Gray, and Miss Color, and the grey cat.", BRITISH),
        ("They realized that the boat had gone.", BRITISH),
        ("Mr Gull put on his wellies and looked over the harbor.", BRITISH),
        ("Mrs. Finch found a flashlight on the sidewalk. How grey it was!", AMERICAN),
        ("Mr. Gull looked over the harbour.", BRITISH),
        ("‘Up!’ said Wren. ‘Look at the color!’ said Finn. ‘Where?’ said Wren.", BRITISH),
        ("“Up!” said Wren. “Look at the color!” said Finn. “Where?” said Wren.", AMERICAN),
        ("She sang ‘Row Your Boat’ and looked at the gray, gray harbor.", AMERICAN),
    ],
)
def test_the_english_of_a_book(text: str, english: English) -> None:
    book = book_of(text)
    assert english_of(book, vocabulary_of(book)) is english


def test_a_word_used_all_through_the_book_is_one_decision() -> None:
    found = votes_of(
        "The gray gray gray gray gray gray gray cat saw colours, neighbours and pyjamas, my favourite."
    )
    assert found.american == 3
    assert found.english is BRITISH


def test_titles_and_words_of_one_country_count_once() -> None:
    assert votes_of("Mr Gull met Mr Finch. Mr Gull laughed.").british == 1
    assert votes_of("A lorry passed a lorry, and another lorry.").british == 1


@pytest.mark.parametrize("text", ["Mr. Gull met Mr Finch.", "Mrs. Gull met Mrs. Finch."])
def test_titles_with_a_point_tell_nothing(text: str) -> None:
    assert votes_of(text) == Votes(british=0, american=0)


def test_a_clear_majority_is_three_to_one() -> None:
    assert votes_of("Colours, neighbours and favourite pyjamas. Gray.").clear
    assert not votes_of("Colours and favourite neighbours. Gray, color.").clear
    assert not votes_of("The neighbours.").clear
