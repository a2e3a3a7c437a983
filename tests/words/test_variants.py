"""Spellings of the two Englishes, with the traps of sense and part of speech."""

from __future__ import annotations

import pytest

from proofkit.settings import English
from proofkit.words.variants import cased_like, other_english, variants

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
