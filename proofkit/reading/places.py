"""Where a book, a spread or a page stands in its age band, measure by measure."""

from __future__ import annotations

from collections.abc import Mapping

from proofkit.reading.bands import AgeBand, Figure, Place
from proofkit.reading.measure import Measures

# The measures that have a place, as they are named wherever a reading is written down.
JUDGED = (
    "words",
    "mean_sentence",
    "longest_sentence",
    "syllables_per_word",
    "off_list",
    "flesch_kincaid_grade",
)


def book_places(measures: Measures, band: AgeBand) -> Mapping[str, Place]:
    """The places of a whole book by the name of the measure; without those that can't be judged."""
    return _places(measures, band, band.words)


def spread_places(measures: Measures, band: AgeBand) -> Mapping[str, Place]:
    """The places of a spread, or of a page: one page may carry all the words of its spread.

    Without words there is nothing to judge. Too few are no fault on a spread; a book can have too few.
    """
    return _places(measures, band, band.spread_words) if measures.words else {}


def value(measures: Measures, name: str, band: AgeBand) -> float | None:
    """A measure in the unit of its band's figure; None where it has too few words to be told."""
    values: Mapping[str, float | None] = {
        "words": measures.words,
        "mean_sentence": measures.mean_sentence,
        "longest_sentence": measures.longest_sentence,
        "syllables_per_word": 100 * measures.syllables_per_word,
        "off_list": measures.off_list(band.word_list),
        "flesch_kincaid_grade": measures.flesch_kincaid_grade,
    }
    return values[name]


def figure(name: str, band: AgeBand) -> Figure | None:
    """What is usual in the band; None for the grade of a book that is read to the child."""
    figures = {
        "words": band.words,
        "mean_sentence": band.mean_sentence,
        "longest_sentence": band.longest_sentence,
        "syllables_per_word": band.syllables,
        "off_list": band.off_list,
        "flesch_kincaid_grade": band.grade,
    }
    return figures[name]


def _places(measures: Measures, band: AgeBand, of_words: Figure) -> Mapping[str, Place]:
    places = {}
    for name in JUDGED:
        usual = of_words if name == "words" else figure(name, band)
        measured = value(measures, name, band)
        if usual is not None and measured is not None:
            places[name] = usual.place(measured)
    return places
