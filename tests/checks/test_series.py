"""Names of several books of a series, compared."""

from __future__ import annotations

from dataclasses import replace

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.series import NAME, Volume, names_across
from proofkit.issue import Tier
from proofkit.settings import English
from proofkit.words.vocabulary import vocabulary_of
from tests.marked import book_of


def volume(path: str, *pages: str) -> Volume:
    book: Book = replace(book_of(*pages), path=path)
    return Volume(
        book=book, analysis=Analysis(english=English.BRITISH, vocabulary=vocabulary_of(book))
    )


FIRST = volume(
    "one.docx",
    "Then Nozibele ran. The crab saw Nozibele.",
    "“I am only Nozibele,” said Nozibele. So Mr McPhee laughed, and Zoë laughed.",
)


def test_each_book_with_a_spelling_of_its_own() -> None:
    second = volume(
        "two.docx", "Then Nozibelle sailed.", "“Ahoy, Nozibelle!” said the crab to Nozibelle."
    )
    first, other = names_across([FIRST, second])
    assert first == ()
    (issue,) = other
    assert issue.check == NAME
    assert issue.quote == "Nozibelle"
    assert issue.suggestions == ("Nozibele",)
    assert issue.message == "in one.docx the name is Nozibele (4 times)"
    assert [second.book.quote(span) for span in issue.related] == ["Nozibelle"] * 2
    assert issue.tier is Tier.QUERY


def test_accents_and_capitals_inside() -> None:
    second = volume("two.docx", "There sat Mr Mcphee, and Bo sang to Zoe.")
    _, other = names_across([FIRST, second])
    found = {issue.quote: issue.suggestions[0] for issue in other}
    assert found == {"Mcphee": "McPhee", "Zoe": "Zoë"}


def test_a_book_that_has_both_minds_its_own_matter() -> None:
    second = volume("two.docx", "Then Nozibelle met Nozibele, and Nozibelle laughed.")
    assert names_across([FIRST, second]) == ((), ())


def test_the_same_name_and_names_of_two_people_are_left_alone() -> None:
    second = volume("two.docx", "Then Nozibele met Zola, and Zola laughed at Nozibele.")
    assert names_across([FIRST, second]) == ((), ())
    assert names_across([]) == ()
    assert names_across([FIRST]) == ((),)


def test_rhyming_and_real_names_are_two_people() -> None:
    third = volume("three.docx", "There sat Anna. There stood Tilly. So Anna hid from Tilly.")
    fourth = volume("four.docx", "There sat Anya. There stood Milly. So Anya hid from Milly.")
    assert names_across([third, fourth]) == ((), ())


def test_the_later_book_follows_where_both_have_it_as_often() -> None:
    third = volume("three.docx", "There sat Zibbelo. So Zibbelo slept.")
    fourth = volume("four.docx", "There sat Zibelo. So Zibelo slept.")
    first, other = names_across([third, fourth])
    assert first == ()
    assert other[0].suggestions == ("Zibbelo",)
