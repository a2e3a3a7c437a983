from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from proofkit.reading.counts import Counter, is_complex, total


@pytest.mark.parametrize(
    "word", ["umbrella", "caterpillar", "discovered", "carpenter", "beautiful"]
)
def test_words_that_gunning_counts(word: str) -> None:
    assert is_complex(word)


@pytest.mark.parametrize(
    "word",
    [
        "goose",
        "created",
        "boxes",
        "visited",
        "wandering",
        "grandmother",
        "merry-go-round",
        "1,000,000",
    ],
)
def test_easy_words_made_long_are_not_complex(word: str) -> None:
    assert not is_complex(word)


def test_names_are_not_complex() -> None:
    assert is_complex("Pendlebury’s")
    assert not is_complex("Pendlebury’s", names={"pendlebury"})


def test_letters_and_figures() -> None:
    counts = Counter().count("Ten-year-old Ann’s 12 o’clock.")
    assert (counts.words, counts.letters, counts.characters) == (4, 20, 22)


def test_a_word_off_the_list_counts_each_time_for_one_and_once_for_the_other() -> None:
    counts = Counter().count("A sieve! A sieve, and another Sieve.")
    assert counts.off_dale_chall == counts.off_spache == 3
    assert counts.unfamiliar == {"sieve"}


def test_names_are_familiar() -> None:
    text = "Zuleika sat. Zuleika’s cat sat."
    assert Counter().count(text).off_spache == 2
    assert Counter(names={"zuleika"}).count(text).off_spache == 0


@given(st.lists(st.text(alphabet="abe ’.!-12", max_size=40), max_size=5))
def test_what_is_counted_together_is_the_sum(texts: list[str]) -> None:
    counter = Counter()
    apart = total(counter.count(text) for text in texts)
    assert apart == counter.count("\n\n".join(texts))
