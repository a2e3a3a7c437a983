"""Spellings of the two Englishes, with the traps of sense and part of speech."""

from __future__ import annotations

import pytest

from proofkit.settings import English
from proofkit.words.english import english_of, votes
from proofkit.words.variants import cased_like, other_english, variants
from proofkit.words.vocabulary import vocabulary_of
from tests.marked import book_of

BRITISH, AMERICAN = English.BRITISH, English.AMERICAN


@pytest.mark.parametrize(
    ("british", "american"),
    [
        ("colour", "color"),
        ("grey", "gray"),
        ("neighbours", "neighbors"),
        ("pyjamas", "pajamas"),
        ("cosier", "cozier"),
        ("travelled", "traveled"),
        ("aeroplane", "airplane"),
        ("analyse", "analyze"),
    ],
)
def test_pairs_that_differ(british: str, american: str) -> None:
    table = variants()
    assert table.belongs_to(british) is BRITISH
    assert table.belongs_to(american) is AMERICAN
    assert table.american(british) == american
    assert table.british(american) == british
    assert table.british(british) == british


@pytest.mark.parametrize(
    ("british", "american"),
    [
        ("storey", "story"),  # of a house; a story is told in both
        ("tyre", "tire"),  # of a wheel; both tire of walking
        ("kerb", "curb"),  # of a street; both curb a temper
        ("cheque", "check"),  # of a bank; both check a door
        ("programme", "program"),  # a computer has a program in both
        ("licence", "license"),  # the noun; both license a dog
        ("practise", "practice"),  # the verb; both have the noun
        ("prise", "prize"),  # with a lever; both win one
        ("judgement", "judgment"),  # the American form is a British variant
        ("learnt", "learned"),  # the American form is a British equal
        ("organise", "organize"),  # Oxford spelling is British too
    ],
)
def test_spellings_at_home_in_both_in_some_sense(british: str, american: str) -> None:
    table = variants()
    assert table.belongs_to(british) is BRITISH
    assert table.belongs_to(american) is None
    assert table.american(british) == american
    assert table.british(american) == american


def test_part_of_speech_tells_noun_from_verb() -> None:
    table = variants()
    assert table.british("practice", "V") == "practise"
    assert table.british("practise", "N") == "practice"
    assert table.british("license", "N") == "licence"
    assert table.british("license", "V") == "license"
    assert table.british("program", "V") == "program"


def test_ax_is_american_and_axe_is_both() -> None:
    assert variants().belongs_to("ax") is AMERICAN
    assert variants().belongs_to("axe") is None


@pytest.mark.parametrize("word", ["surprise", "exercise", "towards", "doughnut", "goose", "mummy"])
def test_words_without_a_partner_are_left_alone(word: str) -> None:
    table = variants()
    assert table.belongs_to(word) is None
    assert table.ise_ize(word) is None


def test_seldom_used_spellings_are_known() -> None:
    assert variants().seldom_in("grey", AMERICAN)
    assert not variants().seldom_in("colour", AMERICAN)


@pytest.mark.parametrize(
    ("word", "partner"),
    [("organise", "organize"), ("Realized", "Realised"), ("analyse", None), ("advertise", None)],
)
def test_ise_and_ize(word: str, partner: str | None) -> None:
    assert variants().ise_ize(word) == partner


def test_capitals_are_kept() -> None:
    assert variants().british("Color") == "Colour"
    assert variants().british("GRAY") == "GREY"
    assert cased_like("I", "A") == "I"
    assert other_english(BRITISH) is AMERICAN


@pytest.mark.parametrize(
    ("text", "english"),
    [
        ("Her neighbours had a grey cat.", BRITISH),
        ("Her neighbors had a gray cat.", AMERICAN),
        ("A boat went round the bay.", BRITISH),
        ("The colour of the gray cat.", BRITISH),
        ("Then Mom said the cat was grey.", AMERICAN),
        ("We met Miss Gray, and Mr Color, and the grey cat.", BRITISH),
        ("They realized that the boat had gone.", BRITISH),
    ],
)
def test_the_english_of_a_book(text: str, english: English) -> None:
    assert english_of(vocabulary_of(book_of(text))) is english


def test_a_word_used_all_through_the_book_is_one_decision() -> None:
    book = book_of(
        "The gray gray gray gray gray gray gray cat saw colours, neighbours and pyjamas, my favourite."
    )
    assert votes(vocabulary_of(book)).american == 3
    assert english_of(vocabulary_of(book)) is BRITISH


def test_a_clear_majority_is_three_to_one() -> None:
    assert votes(vocabulary_of(book_of("Colours, neighbours and favourite pyjamas. Gray."))).clear
    assert not votes(vocabulary_of(book_of("Colours and favourite neighbours. Gray, color."))).clear
    assert not votes(vocabulary_of(book_of("The neighbours."))).clear
