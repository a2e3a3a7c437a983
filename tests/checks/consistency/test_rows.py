"""What makes one row, and which form the rows are on."""

from __future__ import annotations

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.consistency import (
    marks_curly_and_straight,
    name_spelt_two_ways,
    title_without_capital,
    word_beside_name,
)
from proofkit.issue import Tier
from proofkit.settings import English, Settings
from proofkit.words.alike import alike, sounds_alike
from proofkit.words.vocabulary import vocabulary_of
from tests.marked import book_of


def analysis_of(book: Book) -> Analysis:
    return Analysis(english=English.BRITISH, vocabulary=vocabulary_of(book))


def test_marks_are_one_row_with_all_other_places() -> None:
    book = book_of(
        "“Oh!” “Ah!” “Eh?” “Mm.” “Ha.”", 'He said "not before the goose is here".', "“Yes.”"
    )
    (issue,) = marks_curly_and_straight.find(book, analysis_of(book), Settings())
    assert issue.suggestions == ("“",)
    assert [book.quote(span) for span in issue.related] == ['"']
    assert issue.tier is Tier.ERROR


def test_a_refrain_is_one_row_and_other_places_have_their_own() -> None:
    refrain = "Tick, tock, said mr Tock, and wound."
    book = book_of(*[refrain] * 5, "Where was mr Tock now?")
    rows = list(title_without_capital.find(book, analysis_of(book), Settings()))
    assert [len(row.related) for row in rows] == [4, 0]


def test_what_comes_back_on_a_few_pages_is_marked_on_each() -> None:
    refrain = "Tick, tock, said mr Tock, and mr Tock wound."
    book = book_of(refrain, refrain)
    rows = list(title_without_capital.find(book, analysis_of(book), Settings()))
    assert sorted(row.span.page for row in rows) == [1, 1, 2, 2]


def test_a_misspelt_name_is_compared_with_its_likeliest_spelling_only() -> None:
    book = book_of(
        "Up went Zibbelo. Down came Zibbelo, and Zibbelo sat.",
        "Then Zibelo and all the Zibbelos left.",
    )
    (issue,) = name_spelt_two_ways.find(book, analysis_of(book), Settings())
    assert issue.quote == "Zibelo"
    assert issue.suggestions == ("Zibbelo",)


def test_equal_numbers_make_a_query() -> None:
    book = book_of("They left Alder Village.", "They loved Alder village.")
    (issue,) = word_beside_name.find(book, analysis_of(book), Settings())
    assert issue.tier is Tier.QUERY


def test_alike_names() -> None:
    assert alike("nozibele", "nozibelle")
    assert alike("pendleberry", "pendelberry")
    assert alike("tibs", "tibbs")
    assert not alike("tilly", "milly")
    assert not alike("maria", "mario")
    assert not alike("tom", "tommy")
    assert not alike("kenya", "kenyan")
    assert sounds_alike("sara", "sarah")
    assert sounds_alike("catherine", "katherine")
    assert not sounds_alike("anna", "anya")
