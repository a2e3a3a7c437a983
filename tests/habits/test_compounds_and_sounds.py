"""Compounds, sounds and words of two spellings: what is one matter, and how it is written again."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import pytest

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.engines.language_model import LanguageModel
from proofkit.habits._sound_words import is_echo, sound_key
from proofkit.habits.compounds import compound_usages, decided_compound, joined_as
from proofkit.habits.sounds import grows, sound_usages
from proofkit.habits.spellings import decided_spelling
from proofkit.habits.usage import Usage
from proofkit.settings import English
from proofkit.words.two_spellings import families, family_by_word
from proofkit.words.vocabulary import vocabulary_of
from tests.marked import book_of


def counts(usages: Sequence[Usage]) -> dict[str, dict[str, int]]:
    return {usage.matter: {form: usage.count(form) for form in usage.places} for usage in usages}


def without_model(book: Book) -> Analysis:
    return Analysis(english=English.BRITISH, vocabulary=vocabulary_of(book))


@pytest.fixture(scope="module")
def model() -> Iterator[LanguageModel]:
    model = LanguageModel()
    yield model
    model.close()


@pytest.mark.parametrize(
    ("written", "form", "better"),
    [
        ("Ice-creams", "ice cream", "Ice creams"),
        ("bed time", "bedtime", "bedtime"),
        ("BEDTIME", "bed-time", "BED-TIME"),
        ("merry go round", "merry-go-round", "merry-go-round"),
    ],
)
def test_a_compound_joined_in_another_way(written: str, form: str, better: str) -> None:
    assert joined_as(written, form) == better


@pytest.mark.engine
def test_a_hyphen_before_a_noun_is_a_matter_of_its_own(model: LanguageModel) -> None:
    book = book_of("A well-known fox met a well-known hen. The fox was well known.")
    pages = tuple(model.analyse([page.prose for page in book.pages]))
    analysis = Analysis(english=English.BRITISH, vocabulary=vocabulary_of(book), pages=pages)
    assert counts(compound_usages(book, analysis)) == {
        "well-known (before a noun)": {"well-known": 2}
    }


@pytest.mark.engine
def test_a_decided_compound_is_looked_for_in_every_shape(model: LanguageModel) -> None:
    book = book_of("She ate ice cream. He ate an icecream. It was bedtime.")
    pages = tuple(model.analyse([page.prose for page in book.pages]))
    analysis = Analysis(english=English.BRITISH, vocabulary=vocabulary_of(book), pages=pages)
    assert counts(compound_usages(book, analysis, ["ice-cream"])) == {
        "ice cream": {"ice cream": 1, "icecream": 1}
    }


def test_the_decided_word_counts_whatever_its_marks_and_capitals() -> None:
    assert decided_compound("icecream", ["bedtime", "Ice-Cream"]) == "ice-cream"
    assert decided_compound("well-known (before a noun)", ["well known"]) == "well known"
    assert decided_compound("teapot", ["bedtime"]) is None


def test_sounds_are_one_however_long() -> None:
    book = book_of("Whoosh! Woosh! Whooosh!", "Zzz. Zzzz.", "Hot. Hoot!", "Oh! Ooh!")
    assert counts(sound_usages(book, without_model(book))) == {
        "hoot": {"hoot": 1},
        "whooosh": {"whoosh": 1, "woosh": 1, "whooosh": 1},
        "zzz": {"zzz": 1, "zzzz": 1},
    }


def test_echoes_are_one_however_joined() -> None:
    book = book_of("Tick-tock! Tick tock! Ticktock!", "Tick tock tick tock.", "Ha ha! Haha!")
    assert counts(sound_usages(book, without_model(book))) == {
        "ha ha": {"haha": 1, "ha ha": 1},
        "tick tock": {"tick-tock": 1, "ticktock": 1, "tick tock": 1},
        "tick": {"tick": 3},
        "tock": {"tock": 3},
    }


def test_what_grows() -> None:
    assert grows("whoosh", "whoooosh")
    assert not grows("whoosh", "woosh")
    assert sound_key("Whoosh") == sound_key("wooosh")
    assert is_echo(("tick", "tock"))
    assert not is_echo(("bed", "time"))


def test_decided_spellings() -> None:
    assert decided_spelling("towards", ("bedtime", "toward")) == "toward"
    assert decided_spelling("wagon", ("Waggons",)) == "waggon"
    assert decided_spelling("towards", ("bedtime",)) is None


def test_a_word_is_respelt_in_its_own_form_and_capitals() -> None:
    family = family_by_word()["waggons"]
    assert family.forms == ("wagon", "waggon")
    assert family.respelt("Waggons", "wagon") == "Wagons"
    assert family.form_of("WAGGONS") == "waggon"


def test_every_family_has_its_spellings_apart() -> None:
    words = [word for family in families() for line in family.lines for word in line]
    assert len(words) == len(set(words))
    assert all(len(line) == len(family.forms) for family in families() for line in family.lines)
