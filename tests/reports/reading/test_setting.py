from __future__ import annotations

import pytest

from proofkit.reports.reading.language import hard_rows, sentences_on_language, where
from proofkit.reports.reading.setting import (
    about,
    duration,
    extent_sentence,
    for_whom,
    formulas,
    grade_sentences,
    pace_sentences,
    rows,
    title,
    to_work_on,
)
from tests.reports.reading.heron import LINE, VERSE, book, report


def test_the_first_line() -> None:
    assert title(report()) == "The Heron"
    assert about(report()) == "463 words on 12 spreads, British English, a picture book for 3 to 6"
    assert about(report(book(LINE, spreads=False))).startswith("11 words on 1 page, ")
    assert about(report(book(LINE, spreads=False, paginated=False))).startswith("11 words, ")
    assert title(report(book(LINE, title=""))) == "heron draft"


def test_read_to_and_read_by() -> None:
    assert for_whom(report()).startswith(
        "Read to the child, about 3 minutes at 150 words a minute."
    )
    assert for_whom(report(age_band="early-reader")).startswith("Read by the child alone")


@pytest.mark.parametrize(
    ("seconds", "told"),
    [
        (1, "1 second"),
        (59, "59 seconds"),
        (60, "1 minute"),
        (200, "3 minutes"),
        (3600, "1 hour"),
        (16_080, "4 hours 28 minutes"),
    ],
)
def test_times_in_words(seconds: int, told: str) -> None:
    assert duration(seconds) == told


def test_what_to_work_on_comes_gravest_first_and_the_empty_spread_last() -> None:
    order = [step.spread for step in to_work_on(report())]
    assert order == [4, 5, 6, 8, 7]


def test_the_rhythm_in_sentences() -> None:
    told = " ".join(pace_sentences(report()))
    assert "the most are on spread 4 (92), the fewest on spread 12 (4)" in told
    assert "Without words: spread 7." in told
    assert "Heavy ones in a row: spread 4 to spread 6." in told


def test_the_grade_by_runs_and_where_there_is_none() -> None:
    assert any(line.startswith("Grade by runs: from ") for line in grade_sentences(report()))
    (told,) = grade_sentences(report(book(LINE)))
    assert told.startswith("A book of fewer than 100 words has no grade")
    assert list(grade_sentences(report(book("")))) == []


def test_the_whole_beside_its_band() -> None:
    by_name = {row.name: row for row in rows(report())}
    assert (by_name["words"].here, by_name["words"].place) == ("463", "within")
    longest = by_name["words in the longest"]
    assert (longest.here, longest.usual, longest.place) == (
        "48",
        "up to 22, 40 at most",
        "well above",
    )
    assert by_name["grade, Flesch-Kincaid"].usual == "any: it is read to the child"
    assert rows(report(book(""))) == []


def test_the_other_formulas() -> None:
    told = formulas(report().book)
    for name in ("reading ease", "Spache", "Dale-Chall", "SMOG", "Coleman-Liau", "ARI", "Fog"):
        assert name in told
    assert formulas(report(book(LINE)).book) == ""


def test_extents() -> None:
    told = extent_sentence(report())
    assert "32 pages, 12 to 15 spreads for the story: it fits." in told
    assert "24 pages, 8 to 11 spreads for the story: 1 spread too many." in told
    assert "room for 4 spreads more" in told
    assert extent_sentence(report(age_band="chapter")) == ""


def test_hard_words_and_gifts() -> None:
    (row,) = hard_rows(report())
    assert (row.word, row.where, row.simpler) == ("sieve", "spread 4", "net")
    assert any(
        "lantern (a picture can show it)" in line for line in sentences_on_language(report())
    )


def test_places_in_a_phrase() -> None:
    made = report()
    assert where(made, [2]) == "spread 2"
    assert where(made, [9, 2, 4]) == "spreads 2, 4 and 9"
    assert where(report(book(LINE, spreads=False, paginated=False)), [1]) == ""


def test_verse_is_told_where_it_is() -> None:
    told = list(sentences_on_language(report(book(VERSE))))
    assert any(line.startswith("Verse: iambic tetrameter") for line in told)
    assert not any(line.startswith("Verse") for line in sentences_on_language(report()))


def test_phonics_are_told_to_who_reads_alone() -> None:
    alone = sentences_on_language(report(age_band="early-reader"))
    assert any(line.startswith("At phase 5 of Letters and Sounds") for line in alone)
    assert not any("Letters and Sounds" in line for line in sentences_on_language(report()))
