"""What makes a spread worth working on, in words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from proofkit.reading.bands import AgeBand, Place
from proofkit.reading.measure import Measures
from proofkit.reading.pace import Pace

# A spread of few words strays further from the usual than a book does, and means nothing by it.
_FEWEST_WORDS = 20
_MANY_HARD_WORDS = 3
_NAMED = 5
_TWICE = 2


def reasons(
    measures: Measures,
    places: Mapping[str, Place],
    band: AgeBand,
    pace: Pace,
    *,
    at: int,
    hard: Sequence[str] = (),
) -> tuple[str, ...]:
    """Why the spread at place ``at`` is worth a look, the gravest first; empty where nothing is.

    ``hard`` are the words on it that are beyond the band and no gift.
    """
    return (
        *_about_its_words(measures, places, band, pace, at),
        *_about_its_sentences(measures, places, band),
        *_about_its_language(measures, places, band, hard),
    )


def _about_its_words(
    measures: Measures, places: Mapping[str, Place], band: AgeBand, pace: Pace, at: int
) -> Iterator[str]:
    if at in pace.empty:
        yield "no words: meant so?"
        return
    times = measures.words / pace.usual if pace.usual else 0
    usual = f"{_times(times)} the book’s usual {pace.usual:.0f}" if times >= _TWICE else ""
    if places.get("words") is Place.WELL_ABOVE:
        most = f"{band.plural} have {band.spread_words.most} at most"
        yield f"{measures.words} words, where {most}{f', and {usual}' if usual else ''}"
    elif places.get("words") is Place.ABOVE:
        most = f"most {band.plural} have up to {band.spread_words.usual}"
        yield f"{measures.words} words, where {most}{f', and {usual}' if usual else ''}"
    elif at in pace.heavy:
        yield f"{measures.words} words, {usual}"
    for first, last in pace.in_a_row:
        if first <= at <= last:
            yield f"one of {last - first + 1} heavy ones in a row"


def _about_its_sentences(
    measures: Measures, places: Mapping[str, Place], band: AgeBand
) -> Iterator[str]:
    if places.get("longest_sentence") is Place.WELL_ABOVE:
        yield (
            f"a sentence of {measures.longest_sentence} words, where {band.longest_sentence.most} is the most"
        )
    elif places.get("mean_sentence") is Place.WELL_ABOVE and measures.words >= _FEWEST_WORDS:
        mean = f"{measures.mean_sentence:.1f}".removesuffix(".0")
        yield (
            f"{mean} words a sentence, where {band.plural} have {band.mean_sentence.most} at most"
        )


def _about_its_language(
    measures: Measures, places: Mapping[str, Place], band: AgeBand, hard: Sequence[str]
) -> Iterator[str]:
    if band.grade and places.get("flesch_kincaid_grade") is Place.WELL_ABOVE:
        yield f"grade {measures.flesch_kincaid_grade:.1f}, where {band.grade.most} is the most"
    if len(hard) >= _MANY_HARD_WORDS:
        more = f" and {len(hard) - _NAMED} more" if len(hard) > _NAMED else ""
        yield f"{len(hard)} words beyond the age: {', '.join(hard[:_NAMED])}{more}"


def _times(times: float) -> str:
    return "twice" if round(times) == _TWICE else f"{times:.0f} times"
