from __future__ import annotations

import pytest

from proofkit.settings import English
from proofkit.words.dictionary import dictionary
from proofkit.words.frequency import zipf
from proofkit.words.slips import slip
from proofkit.words.suggest import suggest

BRITISH = dictionary(English.BRITISH)


@pytest.mark.parametrize(
    ("written", "meant"),
    [
        ("wory", "worry"),
        ("realy", "really"),
        ("recieve", "receive"),
        ("beatiful", "beautiful"),
        ("suprise", "surprise"),
        ("wensday", "Wednesday"),
        ("frend", "friend"),
        ("enuff", "enough"),
        ("becuase", "because"),
        ("kangeroo", "kangaroo"),
        ("didnt", "didn't"),
        ("did’nt", "didn’t"),
        ("thegoose", "the goose"),
        ("Tommorow", "Tomorrow"),
        ("BEUTIFUL", "BEAUTIFUL"),
    ],
)
def test_what_was_meant_comes_first(written: str, meant: str) -> None:
    assert suggest(written, BRITISH)[0] == meant


def test_at_most_five_and_none_for_what_resembles_nothing() -> None:
    assert 1 < len(suggest("hert", BRITISH)) <= 5
    assert suggest("otamenhaibuga", BRITISH) == ()
    assert suggest("x" * 60, BRITISH) == ()


def test_the_english_decides() -> None:
    assert suggest("coulour", BRITISH)[0] == "colour"
    assert suggest("coulour", dictionary(English.AMERICAN))[0] == "color"


@pytest.mark.parametrize(
    ("likely", "unlikely"),
    [
        (("realy", "really"), ("reply", "really")),  # a doubled letter, and a wrong one
        (("thier", "their"), ("thebr", "their")),  # changed round, and wrong
        (("seperate", "separate"), ("septrate", "separate")),  # a vowel for a vowel
        (("fone", "phone"), ("gone", "phone")),  # as it sounds
        (("gpose", "goose"), ("gmose", "goose")),  # the key beside
        (("goise", "goose"), ("voose", "goose")),  # not the first letter
    ],
)
def test_likely_slips_cost_less(likely: tuple[str, str], unlikely: tuple[str, str]) -> None:
    assert 0 < slip(*likely) < slip(*unlikely)


def test_no_slip_costs_nothing() -> None:
    assert slip("goose", "goose") == 0
    assert slip("", "") == 0


def test_frequency_is_on_the_zipf_scale() -> None:
    assert zipf("the") > 7
    assert 3 < zipf("goose") < 4.5
    assert zipf("Goose") == zipf("goose")
    assert zipf("otamenhaibuga") == 0
