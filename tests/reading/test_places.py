"""The same text, moved from band to band."""

from __future__ import annotations

import pytest

from proofkit.reading.bands import AgeBand, Place, band_named, band_names
from proofkit.reading.measure import BookReading, measure
from proofkit.reading.places import JUDGED, book_places, figure, spread_places, value
from tests.marked import book_of

ORDER = [Place.BELOW, Place.WITHIN, Place.ABOVE, Place.WELL_ABOVE]
BANDS = [band_named(name) for name in band_names()]
READ_TO = [band for band in BANDS if band.reading == "read to"]
READ_BY = [band for band in BANDS if band.reading == "read by"]

PLAIN = "The cat sat on the mat. She was glad. It was a good day, and the sun was warm. "
HARDER = (
    "Beneath the crumbling lighthouse, a solitary cormorant considered the approaching storm. "
    "Nobody remembered when the keeper had abandoned his lantern. "
)
HARDEST = (
    "Notwithstanding considerable hesitation, the superintendent eventually acknowledged that the "
    "municipal observatory, which had deteriorated throughout successive administrations, required "
    "immediate rehabilitation by experienced professionals with appropriate instruments. "
)
TEXTS = {
    "plain": PLAIN * 2,
    "plain and long": PLAIN * 20,
    "mixed": (PLAIN * 3 + HARDER) * 6,
    "harder": HARDER * 6,
    "hardest": HARDEST * 6,
}


def reading(name: str) -> BookReading:
    return measure(book_of(TEXTS[name]))


def rank(place: Place) -> int:
    return ORDER.index(place)


@pytest.mark.parametrize("name", TEXTS)
@pytest.mark.parametrize("bands", [READ_TO, READ_BY], ids=["read to", "read by"])
@pytest.mark.parametrize("measure_name", JUDGED)
def test_an_older_reader_makes_no_measure_graver(
    name: str, bands: list[AgeBand], measure_name: str
) -> None:
    for judge in (book_places, spread_places):
        places = [judge(reading(name), band) for band in bands]
        ranks = [rank(each[measure_name]) for each in places if measure_name in each]
        assert ranks == sorted(ranks, reverse=True)


@pytest.mark.parametrize("measure_name", JUDGED)
def test_every_measure_has_a_text_whose_place_changes(measure_name: str) -> None:
    bands = READ_BY if measure_name == "flesch_kincaid_grade" else BANDS
    places = {
        (name, spread_places(reading(name), band)[measure_name])
        for name in TEXTS
        for band in bands
        if measure_name in spread_places(reading(name), band)
    }
    assert len(places) > len({name for name, _ in places})


@pytest.mark.parametrize("measure_name", JUDGED)
def test_the_figures_themselves_rise_with_age(measure_name: str) -> None:
    for bands in (READ_TO, READ_BY):
        figures = [figure(measure_name, band) for band in bands]
        if measure_name == "off_list":  # the older bands have the longer list
            figures = [
                figure(measure_name, band)
                for band in bands
                if band.word_list == bands[-1].word_list
            ]
        usual = [each.usual for each in figures if each]
        assert usual == sorted(usual)


def test_a_book_that_is_read_to_a_child_has_no_place_for_its_grade() -> None:
    picture, early = band_named("picture"), band_named("early-reader")
    assert "flesch_kincaid_grade" not in book_places(reading("hardest"), picture)
    assert book_places(reading("hardest"), early)["flesch_kincaid_grade"] is Place.WELL_ABOVE


def test_a_book_under_100_words_has_no_place_for_a_grade() -> None:
    assert "flesch_kincaid_grade" not in book_places(reading("plain"), band_named("early-reader"))


def test_a_book_may_have_too_few_words_but_no_spread_has() -> None:
    chapter = band_named("chapter")
    assert book_places(reading("plain"), chapter)["words"] is Place.BELOW
    assert spread_places(reading("plain"), chapter)["words"] is Place.WITHIN


def test_an_empty_spread_has_no_places() -> None:
    assert spread_places(measure(book_of("")), band_named("picture")) == {}


def test_a_measure_is_told_in_the_unit_of_its_figure() -> None:
    told = value(reading("plain"), "syllables_per_word", band_named("picture"))
    assert told is not None
    assert 100 <= told < 131
