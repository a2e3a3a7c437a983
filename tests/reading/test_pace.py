from __future__ import annotations

from proofkit.reading.bands import band_named
from proofkit.reading.pace import pace_of, seconds_aloud

PICTURE = band_named("picture")  # 67 words on a spread as a rule, 83 at most


def test_the_heaviest_the_lightest_and_the_empty() -> None:
    pace = pace_of([30, 0, 45, 12, 12], PICTURE)
    assert (pace.heaviest, pace.lightest, pace.empty) == ((2,), (3, 4), (1,))
    assert pace.usual == 21


def test_even_spreads_have_no_heaviest() -> None:
    pace = pace_of([30, 30, 30], PICTURE)
    assert (pace.heaviest, pace.lightest) == ((), ())


def test_heavy_by_the_band_and_by_the_book() -> None:
    assert pace_of([60, 67, 68, 60], PICTURE).heavy == (2,)
    assert pace_of([20, 20, 45, 20], PICTURE).heavy == (2,)
    assert pace_of([5, 5, 20, 5], PICTURE).heavy == ()


def test_three_heavy_ones_in_a_row_and_no_fewer() -> None:
    assert pace_of([30, 70, 70, 30, 70, 70, 70, 30], PICTURE).in_a_row == ((4, 6),)
    assert pace_of([70, 70, 0, 70], PICTURE).in_a_row == ()


def test_a_book_without_a_word() -> None:
    pace = pace_of([0, 0], PICTURE)
    assert (pace.usual, pace.empty, pace.heavy) == (0, (0, 1), ())
    assert pace_of([], PICTURE).empty == ()


def test_reading_aloud() -> None:
    assert seconds_aloud(450, 150) == 180
    assert seconds_aloud(450, 180) == 150
