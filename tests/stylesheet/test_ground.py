from __future__ import annotations

import pytest

from proofkit.analysis import Analysis
from proofkit.book import Span
from proofkit.habits.usage import Usage
from proofkit.issue import Issue, Tier
from proofkit.settings import English, Settings
from proofkit.stylesheet.ground import Ground, row_of
from proofkit.stylesheet.own_sounds import own_sounds
from proofkit.stylesheet.questions import question_rows
from proofkit.stylesheet.sheet import Basis, Other, Row
from proofkit.words.vocabulary import vocabulary_of
from tests.marked import book_of


def usage(**counts: int) -> Usage:
    """A usage of a dash, each form on pages of its own, in the order given."""
    places, page = {}, 1
    for form, count in counts.items():
        places[form] = tuple(Span(page=page + at, start=0, end=3) for at in range(count))
        page += count
    return Usage(matter="dash", places=places)


@pytest.mark.parametrize(
    ("counts", "form", "basis"),
    [
        ({"em": 1}, "em", Basis.ALWAYS),
        ({"em": 4, "en": 0}, "em", Basis.ALWAYS),
        ({"em": 4, "en": 2}, "em", Basis.MOSTLY),
        ({"en": 1, "em": 2}, "em", Basis.MOSTLY),
        ({"em": 3, "en": 2}, "", Basis.OPEN),
        ({"em": 1, "en": 1}, "", Basis.OPEN),
    ],
)
def test_the_books_form_counts_where_it_is_twice_as_often_as_any_other(
    counts: dict[str, int], form: str, basis: Basis
) -> None:
    row = row_of(usage(**counts), None)
    assert row is not None
    assert (row.form, row.basis) == (form, basis)
    assert len(row.places) + sum(len(other.places) for other in row.others) == sum(counts.values())


def test_a_decision_comes_before_any_count() -> None:
    row = row_of(usage(em=9, en=1), "en")
    assert row is not None
    assert (row.form, row.basis, len(row.places)) == ("en", Basis.DECIDED, 1)
    assert [other.form for other in row.others] == ["em"]


def test_what_the_book_has_not_is_a_row_only_if_it_was_decided() -> None:
    assert row_of(usage(), None) is None
    row = row_of(usage(), "en")
    assert row == Row(term="en", form="en", basis=Basis.DECIDED)


def ground(*texts: str, issues: tuple[Issue, ...] = ()) -> Ground:
    book = book_of(*texts)
    analysis = Analysis(english=English.BRITISH, vocabulary=vocabulary_of(book))
    return Ground(book=book, analysis=analysis, settings=Settings(), issues=issues)


@pytest.mark.parametrize(
    ("text", "sounds"),
    [
        ("Skrunk! went the gate.", {"skrunk"}),
        ("Tirra … tirra-lirra … Tirra tirra …", {"tirra", "tirra-lirra"}),
        ("“Wuff!” said the dog.", {"wuff"}),
        ("“Fifty-two!” said the dog. “Whoo-hoo!”", {"whoo-hoo"}),
        # Said of something, it is a word of the story.
        ("Skrunk! The skrunk was a bird.", set()),
        ("“Help!” said the dog. “Splendid!”", set()),
        ("“Otwin!” said the dog. He ran to Otwin.", set()),
    ],
)
def test_a_rare_word_that_always_stands_alone_is_a_sound(text: str, sounds: set[str]) -> None:
    assert set(own_sounds(ground(text), frozenset())) == sounds


def query(page: int, quote: str, read: str, message: str, tier: Tier = Tier.QUERY) -> Issue:
    return Issue(
        check="consistency/some",
        tier=tier,
        span=Span(page=page, start=4, end=4 + len(quote)),
        quote=quote,
        message=message,
        suggestions=(read,),
        confidence=0.5,
    )


def test_queries_of_consistency_are_open_questions_and_equal_ones_are_one() -> None:
    asked = (
        query(1, "hill", "Hill", "part of a name"),
        query(2, "hill", "Hill", "part of a name"),
        query(2, "Anya", "Anna", "elsewhere the book has Anna"),
        query(2, "Ana", "Anna", "elsewhere the book has Anna", Tier.ERROR),
    )
    rows = question_rows(ground("The hill", "The hill", issues=asked), ())
    assert [(row.term, row.note) for row in rows] == [
        ("hill or Hill", "part of a name"),
        ("Anya or Anna", "elsewhere the book has Anna"),
    ]
    assert len(rows[0].others[0].places) == 2


def test_what_is_asked_already_is_not_asked_twice() -> None:
    asked = query(1, "bed-time", "bedtime", "elsewhere bedtime")
    row = Row(
        term="bedtime",
        form="",
        basis=Basis.OPEN,
        others=(Other(form="bed-time", places=(asked.span,)),),
    )
    assert question_rows(ground("The bed-time", issues=(asked,)), (row,)) == (row,)


def test_other_families_ask_nothing_of_a_style_sheet() -> None:
    spelling = Issue(
        check="spelling/misspelling",
        tier=Tier.QUERY,
        span=Span(page=1, start=4, end=8),
        quote="hill",
        message="not in the dictionary",
        confidence=0.5,
    )
    assert question_rows(ground("The hill", issues=(spelling,)), ()) == ()
