from __future__ import annotations

import pytest

from proofkit.reading.bands import band_named
from proofkit.reading.extent import Fit, extents_of

PICTURE = band_named("picture")


def fits(words: int, spreads: int) -> dict[int, tuple[Fit, int]]:
    return {each.pages: (each.fit, each.over) for each in extents_of(words, spreads, PICTURE)}


@pytest.mark.parametrize("spreads", [12, 13, 15])
def test_a_usual_picture_book(spreads: int) -> None:
    assert fits(480, spreads)[32] == (Fit.FITS, 0)


def test_too_many_spreads_and_too_few() -> None:
    assert fits(480, 17)[32] == (Fit.TOO_LONG, 2)
    assert fits(480, 10)[32] == (Fit.ROOM, -2)
    assert fits(480, 10)[24] == (Fit.FITS, 0)
    assert fits(480, 17)[40] == (Fit.FITS, 0)


def test_too_many_words_for_the_spreads() -> None:
    assert fits(1200, 13)[32] == (Fit.TOO_LONG, 0)
    assert fits(1200, 0)[40] == (Fit.FITS, 0)
    assert fits(1200, 0)[24] == (Fit.TOO_LONG, 0)


def test_the_story_has_fewer_spreads_than_the_book() -> None:
    for each in extents_of(480, 0, PICTURE):
        assert each.least < each.most < each.pages / 2
        assert each.most - each.least == 3


def test_long_books_are_not_made_to_an_extent() -> None:
    assert extents_of(30_000, 0, band_named("middle-grade")) == ()
    assert extents_of(0, 0, PICTURE) == ()
