"""Words of one country: the table, what is left out of it, and where a book has them."""

from __future__ import annotations

import runpy

import pytest

from proofkit.settings import English
from proofkit.words.country_words import country_words, words_of_country
from proofkit.words.data import wordlist
from proofkit.words.vocabulary import vocabulary_of
from tests.marked import book_of

AMBIGUOUS = """jumper biscuit boot chips pants trunk hood bonnet torch tap lift holiday jelly jam vest purse braces
suspenders tin can corn fall rubber pitcher cupboard closet store shop mad cross flat tube football truck skip"""


def found(text: str, english: English) -> dict[str, int]:
    book = book_of(text)
    words = words_of_country(book, vocabulary_of(book), english)
    return {own.word: len(spans) for own, spans in words}


def test_the_table_is_what_the_script_makes() -> None:
    script = runpy.run_path(str(wordlist("make_country_words.py")))
    if not script["SOURCE"].exists():
        pytest.skip("voc.tab as published stands only in the project, not in an installed proofkit")
    made = dict.fromkeys("\t".join(row) for row in sorted(script["rows"]()))
    table = wordlist("country-words.tsv").read_text(encoding="utf-8")
    assert table == script["HEADER"] + "\n".join(made) + "\n"


def test_no_word_of_both_countries_is_in_it() -> None:
    words = {own.word for own in country_words()}
    assert words.isdisjoint(AMBIGUOUS.split())


def test_no_word_is_of_both_englishes_and_each_has_another() -> None:
    englishes: dict[str, set[English]] = {}
    for own in country_words():
        englishes.setdefault(own.word, set()).add(own.english)
        assert all(own.others)
        assert own.word not in own.others
    assert [word for word, of in englishes.items() if len(of) > 1] == []


def test_what_is_said_instead_is_not_a_word_of_the_same_country() -> None:
    words = {(own.english, own.word) for own in country_words()}
    for own in country_words():
        assert all((own.english, other) not in words for other in own.others)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("A flashlight lay on the sidewalk.", {"flashlight": 1, "sidewalk": 1}),
        ("Sidewalks! Sidewalks everywhere.", {"sidewalks": 2}),
        ("The trash\ncan fell over.", {"trash can": 1}),
        ("Cotton candy and candy.", {"cotton candy": 1, "candy": 1}),
        ("The mailman’s bag and the faucet's drip.", {"mailman": 1, "faucet": 1}),
        ("THE FAUCET DRIPS.", {"faucet": 1}),
        ("The Flashlight Gang met Sidewalk Sam.", {}),
        ("A candy cane, a candy-striped pole, an aftermath.", {}),
        ("A lorry and a dustbin.", {}),
    ],
)
def test_american_words(text: str, words: dict[str, int]) -> None:
    assert found(text, English.AMERICAN) == words


def test_british_words() -> None:
    text = "He spent his pocket money on an ice lolly in the car park."
    assert found(text, English.BRITISH) == {"pocket money": 1, "ice lolly": 1, "car park": 1}
