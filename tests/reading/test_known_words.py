from __future__ import annotations

import pytest

from proofkit.reading.bands import band_names
from proofkit.reading.known_words import is_thing, known_words, school_years


@pytest.mark.parametrize(
    "word",
    """the little jump apple spoon wardrobe hedgehog kettle umbrella tiptoe gull seal treetop bedtime unhappy
    sleepy favourite colour grandpa trousers hiccup pirate enormous tenth""".split(),
)
def test_words_that_a_child_of_five_knows(word: str) -> None:
    assert known_words("picture").knows(word)


@pytest.mark.parametrize(
    "word",
    """perspire reside commence conceal tranquil remorse contradict pilfer literacy scholarship incurable
    meander frigid commune perplexed melancholy""".split(),
)
def test_words_that_a_child_of_five_hardly_knows(word: str) -> None:
    assert not known_words("picture").knows(word)


def test_a_word_inside_by_chance_makes_no_word_known() -> None:
    for word in ("perspire", "reside", "incandescent"):
        assert not known_words("picture").knows(word)


def test_known_by_a_part_is_not_known_itself() -> None:
    known = known_words("picture")
    assert known.knows("unhappy")
    assert not known.knows_itself("unhappily")
    assert known.knows_itself("happy")


@pytest.mark.parametrize("band", band_names())
def test_every_band_knows_the_first_words(band: str) -> None:
    assert all(
        known_words(band).knows(word) for word in "a and the go dog mum was said cake".split()
    )


def test_only_older_bands_know_the_later_school_words() -> None:
    assert [name for name in band_names() if known_words(name).knows("mischievous")] == [
        "middle-grade"
    ]
    assert school_years("mischievous") == "Years 5 and 6"
    assert school_years("occasionally") == "Years 3 and 4"  # printed occasion(ally)
    assert school_years("goose") == ""


def test_a_picture_can_show_animals_and_things() -> None:
    assert all(map(is_thing, ["gull", "crane", "teapot", "porridge", "oak", "elbow", "pebble"]))
    assert not any(map(is_thing, ["idea", "sorrow", "quickly", "remorse", "adviser"]))
