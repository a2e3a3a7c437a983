from __future__ import annotations

import pytest

from proofkit.reports.fault import Fault, fault_of
from tests.reports.slips import slip


def shown(page: str, quote: str, *suggestions: str, at: int | None = None) -> Fault:
    return fault_of(page, slip(page, quote, *suggestions, at=at))


@pytest.mark.parametrize(
    ("quote", "reading", "quote_shown", "reading_shown"),
    [
        ("key .", "key.", "key␣.", "key."),
        ("she  took", "she took", "she␣␣took", "she took"),
        ("said,he", "said, he", "said,he", "said,␣he"),
        ("\N{NO-BREAK SPACE}a", " a", "␣a", "␣a"),
        ("bed time", "bedtime", "bed time", "bedtime"),
    ],
)
def test_where_the_fix_is_a_space_spaces_that_hide_are_shown(
    quote: str, reading: str, quote_shown: str, reading_shown: str
) -> None:
    found = shown(f"x {quote} y", quote, reading)
    assert (found.quote, found.readings) == (quote_shown, (reading_shown,))


@pytest.mark.parametrize(
    ("page", "quote", "reading", "quote_shown", "reading_shown"),
    [
        ("to two places,, in one day", ",,", ",", "places,,", "places,"),
        ('"More!" said Nell', '"', "“", '"More!"', '“More!"'),
        ("bucket .", " ", "", "bucket␣.", "bucket."),
        ("Then she  took it", "  ", " ", "she␣␣took", "she took"),
        ("Then she\ttook it", "\t", " ", "she␣took", "she took"),
    ],
)
def test_a_mark_or_a_space_brings_its_neighbours_along(
    page: str, quote: str, reading: str, quote_shown: str, reading_shown: str
) -> None:
    found = shown(page, quote, reading)
    assert (found.quote, found.readings) == (quote_shown, (reading_shown,))
    assert page[found.start : found.end].split() == quote_shown.replace("␣", " ").split()


def test_what_is_put_between_two_characters_is_shown_with_its_word() -> None:
    page = "Up and up she went"
    assert shown(page, "", ".", at=len(page)) == Fault(
        start=14, end=18, quote="went", readings=("went.",)
    )


def test_a_neighbour_too_long_for_a_slip_is_cut() -> None:
    assert len(shown("W" + "o" * 99 + " .", " ", "").quote) < 30


def test_taking_out_is_said_in_words() -> None:
    assert shown("the the goat", "the ", "").readings == ("(take out)",)
    assert shown("“ “Baa", "“", "", at=0) == Fault(
        start=0, end=1, quote="“", readings=("(take out)",)
    )


def test_several_readings_keep_their_order() -> None:
    assert shown("her bed time", "bed time", "bedtime", "bed-time").readings == (
        "bedtime",
        "bed-time",
    )


def test_without_a_reading_nothing_is_added() -> None:
    assert shown("the goat, , went", ", ,") == Fault(start=8, end=11, quote=", ,", readings=())
