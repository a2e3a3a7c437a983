"""Forms by the word alone."""

from __future__ import annotations

import pytest

from proofkit.settings import English
from proofkit.words.dictionary import dictionary
from proofkit.words.forms import (
    has_one_form,
    irregular_verbs,
    participle_by_past,
    past_by_participle,
    past_of,
    plural_of,
    singular_of,
    third_person_of,
)


@pytest.mark.parametrize(
    ("plain", "past", "third"),
    [
        ("take", "took", "takes"),
        ("hop", "hopped", "hops"),
        ("hope", "hoped", "hopes"),
        ("cry", "cried", "cries"),
        ("play", "played", "plays"),
        ("watch", "watched", "watches"),
        ("open", "opened", "opens"),
        ("go", "went", "goes"),
        ("have", "had", "has"),
        ("fix", "fixed", "fixes"),
    ],
)
def test_past_and_third_person(plain: str, past: str, third: str) -> None:
    assert past_of(plain) == past
    assert third_person_of(plain) == third


@pytest.mark.parametrize(
    ("singular", "plural"),
    [("dog", "dogs"), ("fox", "foxes"), ("pony", "ponies"), ("monkey", "monkeys"), ("mouse", "mice"),
     ("loaf", "loaves"), ("hero", "heroes"), ("house", "houses"), ("shoe", "shoes")],
)  # fmt: skip
def test_plurals_there_and_back(singular: str, plural: str) -> None:
    assert plural_of(singular) == plural
    assert singular_of(plural, dictionary(English.BRITISH)) == singular


@pytest.mark.parametrize(
    "word",
    ["bus", "glass", "news", "princess", "walrus", "this", "sheep", "trousers", "dog", "chess"],
)
def test_no_plural_by_its_form(word: str) -> None:
    assert singular_of(word, dictionary(English.BRITISH)) is None


def test_one_form_for_one_and_many() -> None:
    assert has_one_form("sheep")
    assert has_one_form("dozen")
    assert not has_one_form("goat")


def test_a_form_that_is_only_a_participle_has_its_past() -> None:
    assert past_by_participle()["taken"] == "took"
    assert past_by_participle()["drunk"] == "drank"
    assert not {"run", "come", "made", "put", "become"} & past_by_participle().keys()


def test_a_form_that_is_only_a_past_has_its_participle() -> None:
    assert participle_by_past()["went"] == "gone"
    assert participle_by_past()["ran"] == "run"
    assert not {"made", "put", "lay", "found", "read"} & participle_by_past().keys()


def test_every_verb_of_the_list_is_english_and_in_order() -> None:
    words = dictionary(English.BRITISH)
    plains = [verb.plain for verb in irregular_verbs()]
    assert plains == sorted(set(plains))
    for verb in irregular_verbs():
        for form in (verb.plain, *verb.pasts, *verb.participles):
            assert words.knows(form) or words.knows_elsewhere(form), form
