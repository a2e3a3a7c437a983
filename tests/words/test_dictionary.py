from __future__ import annotations

import pytest

from proofkit.settings import English
from proofkit.words.dictionary import dialect, dictionary, familiar, joined_in_novels

BRITISH, AMERICAN = dictionary(English.BRITISH), dictionary(English.AMERICAN)


@pytest.mark.parametrize(
    "word",
    [
        *("goose", "Goose", "GOOSE", "geese", "goose's", "goose’s", "geese’s", "Goose'll", "who'd"),
        *("don't", "don’t", "o’clock", "they’ve", "ma'am", "let's", "couldn’t"),
        *("whirr-tick", "half-past", "b-b-but", "self-raising", "ice‑cream"),
        *("Africa", "Africa’s", "AFRICA", "African", "Monday", "Mondays", "Joneses", "Christmas"),
        *(
            "Mr",
            "Dr",
            "DR",
            "TV",
            "km",
            "2nd",
            "1920s",
            "café",
            "naïve",
            "fiancé",
            "fiance",
            "crèche",
            "melee",
        ),
        *("gonna", "dunno", "ain't", "splosh", "vroom", "atishoo", "yippee", "mum", "mama"),
    ],
)
def test_known_in_both(word: str) -> None:
    assert BRITISH.knows(word)
    assert AMERICAN.knows(word)


@pytest.mark.parametrize(
    "word",
    [
        *("realy", "wory", "recieve", "alot", "goosse", "dont", "thier", "diaster", "stroy"),
        *("belive", "publically", "wich", "monday", "africa", "whirr-tikc", "glimple", "Tumeloe"),
    ],
)
def test_unknown_in_both(word: str) -> None:
    assert not BRITISH.knows(word)
    assert not AMERICAN.knows(word)
    assert not BRITISH.knows_elsewhere(word)


@pytest.mark.parametrize(
    ("british", "american"),
    [
        ("colour", "color"),
        ("Colour", "Color"),
        ("theatre’s", "theater’s"),
        ("travelled", "traveled"),
        ("grey", "gray"),
        ("pyjamas", "pajamas"),
        ("aeroplane", "airplane"),
        ("realise", "realize"),
    ],
)
def test_each_english_has_its_own_spelling(british: str, american: str) -> None:
    assert BRITISH.knows(british)
    assert AMERICAN.knows(american)
    assert AMERICAN.knows_elsewhere(british)
    assert BRITISH.knows(american) is (american == "realize")
    assert BRITISH.knows_elsewhere(american) is (american != "realize")


def test_names_take_their_capital() -> None:
    assert BRITISH.is_name("Africa")
    assert BRITISH.is_name("Anna’s")
    assert not BRITISH.is_name("africa")
    assert not BRITISH.is_name("Goose")
    assert BRITISH.as_name("monday") == "Monday"
    assert BRITISH.as_name("goose") is None


def test_novels_tell_of_words_beyond_the_dictionary() -> None:
    assert {"leetle", "sech", "yerself"} <= dialect()
    assert {"whiskers", "raisins", "climbed"} <= familiar()
    assert {"claimed", "leetle", "the"}.isdisjoint(familiar())
    assert {"raindrop", "beehive"} <= joined_in_novels()
    assert not any(BRITISH.knows(word) or AMERICAN.knows(word) for word in dialect())


def test_it_is_read_once() -> None:
    assert dictionary(English.BRITISH) is BRITISH
