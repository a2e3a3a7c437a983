from __future__ import annotations

import pytest

from proofkit.settings import English
from proofkit.words.letter_sounds import by_letters
from proofkit.words.pronunciations import listed, pronunciations, spoken_as, stress


@pytest.mark.parametrize(
    ("word", "american", "british"),
    [
        ("nature", "N EY1 CH ER0", "N EY1 CH AH0"),
        ("car", "K AA1 R", "K AA1"),
        ("carry", "K AE1 R IY0", "K AE1 R IY0"),
        ("fairy", "F EH1 R IY0", "F EA1 R IY0"),
        ("merry", "M EH1 R IY0", "M EH1 R IY0"),
        ("bear", "B EH1 R", "B EA1"),
        ("near", "N IH1 R", "N IA1"),
        ("bird", "B ER1 D", "B ER1 D"),
        ("furry", "F ER1 IY0", "F ER1 R IY0"),
        ("hurry", "HH ER1 IY0", "HH AH1 R IY0"),
        ("squirrel", "S K W ER1 AH0 L", "S K W IH1 R AH0 L"),
        ("hot", "HH AA1 T", "HH OH1 T"),
        ("father", "F AA1 DH ER0", "F AA1 DH AH0"),
        ("dog", "D AO1 G", "D OH1 G"),
        ("ball", "B AO1 L", "B AO1 L"),
        ("swan", "S W AA1 N", "S W OH1 N"),
        ("dancing", "D AE1 N S IH0 NG", "D AA1 N S IH0 NG"),
        ("grassy", "G R AE1 S IY0", "G R AA1 S IY0"),
        ("passenger", "P AE1 S AH0 N JH ER0", "P AE1 S AH0 N JH AH0"),
        ("fire", "F AY1 ER0", "F AY1 AH0"),
    ],
)
def test_british_sound_by_rule(word: str, american: str, british: str) -> None:
    assert pronunciations(word, English.AMERICAN)[0] == tuple(american.split())
    assert pronunciations(word, English.BRITISH)[0] == tuple(british.split())


def test_british_readers_differ_over_scone_and_poor() -> None:
    assert {way[2] for way in pronunciations("scone", English.BRITISH)} == {"OH1", "OW1"}
    assert {way[-1] for way in pronunciations("poor", English.BRITISH)} == {"UA1", "AO1"}


@pytest.mark.parametrize(
    ("word", "sounds"),
    [
        ("Goose’s", "G UW1 S IH0 Z"),
        ("runnin’", "R AH1 N IH0 N"),
        ("whooosh", "W UH1 SH"),
        ("moonbeam", "M UW1 N B IY2 M"),
        ("pyjamas", "P AH0 JH AA1 M AH0 Z"),
        ("’Twas", "T W AH1 Z"),
        ("naïve", "N AY2 IY1 V"),
    ],
)
def test_words_in_other_forms(word: str, sounds: str) -> None:
    spoken = spoken_as(word, English.AMERICAN)
    assert spoken.ways[0] == tuple(sounds.split())
    assert not spoken.guessed


@pytest.mark.parametrize(
    ("word", "sounds"),
    [
        ("glime", "G L AY1 M"),
        ("snizzle", "S N IH1 Z AH0 L"),
        ("bloop", "B L UW1 P"),
        ("zigzoo", "Z IH0 G Z UW1"),
        ("quib", "K W IH1 B"),
    ],
)
def test_invented_words_by_their_letters(word: str, sounds: str) -> None:
    assert by_letters(word) == tuple(sounds.split())


def test_a_guess_says_that_it_is_one() -> None:
    assert spoken_as("Snizzlewump", English.BRITISH).guessed
    assert spoken_as("123", English.BRITISH).ways == ()


def test_a_noise_without_a_vowel_is_one_beat() -> None:
    assert stress(by_letters("pfft")) == "1"


def test_stress_is_a_digit_for_each_syllable() -> None:
    assert stress(pronunciations("butterfly", English.BRITISH)[0]) == "102"


def test_all_the_table_can_be_read() -> None:
    assert listed("'bout")
    assert listed("zoos")
    assert listed("zzzyx") == ()
