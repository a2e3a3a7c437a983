from __future__ import annotations

from dataclasses import replace

import msgspec
import pytest

from proofkit.problem import Unusable
from proofkit.reading.bands import Place
from proofkit.reading.measure import measure
from proofkit.reading_report import ReadingReport, reading_report_of
from proofkit.settings import English
from tests.reports.reading.heron import LINE, book, hard, report


def test_each_spread_says_why_it_is_worth_working_on() -> None:
    steps = report().steps
    reasons = {step.spread: step.reasons for step in steps if step.reasons}
    assert reasons[4] == (
        "92 words, where picture books have 83 at most, and 3 times the book’s usual 33",
        "one of 3 heavy ones in a row",
    )
    assert reasons[5][0].startswith("77 words, where most picture books have up to 67")
    assert reasons[7] == ("no words: meant so?",)
    assert reasons[8] == ("a sentence of 48 words, where 40 is the most",)
    assert set(reasons) == {4, 5, 6, 7, 8}


def test_the_rhythm_is_that_of_the_spreads() -> None:
    made = report()
    assert [made.steps[at].spread for at in made.pace.heaviest] == [4]
    assert [made.steps[at].spread for at in made.pace.empty] == [7]
    assert [(made.steps[a].spread, made.steps[b].spread) for a, b in made.pace.in_a_row] == [(4, 6)]


def test_a_page_that_lies_on_no_spread_is_a_step_of_its_own() -> None:
    first, *others = book(LINE, LINE, LINE).pages
    whole = book(LINE, LINE, LINE)
    made = report(replace(whole, pages=(replace(first, spread=None, label="Page 1"), *others)))
    assert [step.spread for step in made.steps] == [None, 2, 3]
    assert [spread.spread for spread in made.spreads] == [2, 3]
    assert len(made.pages) == 3


def test_without_spreads_pages_are_the_steps() -> None:
    made = report(book(LINE, LINE * 9, spreads=False))
    assert made.spreads == ()
    assert [step.pages for step in made.steps] == [(1,), (2,)]
    assert made.steps[1].places["words"] is Place.WELL_ABOVE


def test_without_marked_pages_there_are_no_steps() -> None:
    made = report(book(LINE * 30, spreads=False, paginated=False))
    assert made.steps == ()
    assert len(made.pages) == 1
    assert made.extents[1].spreads == 12


def test_three_hard_words_on_a_spread_are_named() -> None:
    of = book("A sieve, a ladle and a colander.", "A sieve.")
    made = reading_report_of(
        of,
        measure(of),
        english=English.BRITISH,
        age_band="picture",
        words_beyond=[hard(of, word) for word in ("sieve", "ladle", "colander")],
    )
    assert made.steps[0].reasons == ("3 words beyond the age: sieve, ladle, colander",)
    assert made.steps[1].reasons == ()


def test_reading_time_is_by_the_pace_that_was_set() -> None:
    made = report(book(LINE * 30))
    assert (made.book.words, made.seconds) == (330, 132)
    assert sum(step.seconds for step in made.steps) == 132


def test_a_long_mean_sentence_is_a_reason_where_no_single_one_is() -> None:
    sentence = f"The heron {'and the frog ' * 7}slept. "  # 24 words
    made = report(book(sentence * 2, LINE))
    assert made.steps[0].reasons == ("24 words a sentence, where picture books have 14 at most",)


def test_the_grade_counts_where_the_child_reads_alone() -> None:
    hard_page = (
        "Unfortunately the imaginary alligator considered everybody's extraordinary umbrella. " * 16
    )
    alone = report(book(hard_page), age_band="early-reader").steps[0].reasons
    heard = report(book(hard_page), age_band="picture").steps[0].reasons
    assert any(reason.startswith("grade ") for reason in alone)
    assert not any(reason.startswith("grade ") for reason in heard)


def test_a_book_without_a_word_is_no_fault_of_ours() -> None:
    made = report(book("", ""))
    assert (made.seconds, made.places, made.extents) == (0, {}, ())


def test_an_unknown_band_is_answered() -> None:
    with pytest.raises(Unusable, match="toddler"):
        report(age_band="toddler")


def test_a_report_survives_being_written_down() -> None:
    made = report(age_band="early-reader")
    again = msgspec.msgpack.decode(msgspec.msgpack.encode(made), type=ReadingReport)
    assert again.pages == made.pages
    assert again.pace == made.pace
    assert again.words_beyond == made.words_beyond
