from __future__ import annotations

import pytest

from proofkit.problem import Unusable
from proofkit.reading.bands import AgeBand, Figure, band_named, band_names

BANDS = [band_named(name) for name in band_names()]


def figures(band: AgeBand) -> list[Figure]:
    grade = [band.grade] if band.grade else []
    return [band.words, band.spread_words, band.mean_sentence, band.longest_sentence, *grade]


def test_the_five_bands_from_the_youngest_on() -> None:
    assert band_names() == ("board", "picture", "early-reader", "chapter", "middle-grade")
    assert [band.youngest for band in BANDS] == sorted(band.youngest for band in BANDS)


@pytest.mark.parametrize("name", ["early-reader", "Early reader", " EARLY-READER "])
def test_names_as_people_type_them(name: str) -> None:
    assert band_named(name).title == "early reader"


def test_an_unknown_band_is_answered_with_the_five() -> None:
    with pytest.raises(Unusable) as problem:
        band_named("toddler")
    assert "“toddler”" in str(problem.value)
    assert all(name in str(problem.value) for name in band_names())


def test_in_a_sentence() -> None:
    assert band_named("picture").phrase == "a picture book for 3 to 6"
    assert band_named("early-reader").phrase == "an early reader for 5 to 8"
    assert band_named("early-reader").plural == "early readers"


@pytest.mark.parametrize("band", BANDS, ids=band_names())
def test_every_figure_has_its_source_and_its_order(band: AgeBand) -> None:
    assert band.youngest < band.oldest
    assert band.ages_source
    for figure in figures(band):
        assert figure.source
        assert 0 <= figure.least <= figure.usual <= figure.most


@pytest.mark.parametrize("band", BANDS, ids=band_names())
def test_only_books_that_children_read_have_a_grade(band: AgeBand) -> None:
    assert band.reading in ("read to", "read by")
    assert (band.grade is not None) == (band.reading == "read by")
