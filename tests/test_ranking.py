"""The order of the table, and what happens when two issues want the same words."""

from __future__ import annotations

import itertools
from dataclasses import replace

import pytest

from proofkit.book import Book, Page, Paragraph, Role, Span
from proofkit.checks.registry import check_names
from proofkit.issue import Issue, Tier, issue_at
from proofkit.ranking import (
    asked_where_unsure,
    one_measure_a_spread,
    ranked,
    weight,
    without_rivals,
)
from tests.marked import book_of

BOOK = book_of("The snial went too the the pond and slept until noon.", "It was late.")


def issue(
    quote: str,
    *readings: str,
    check: str = "spelling/misspelling",
    tier: Tier = Tier.ERROR,
    confidence: float = 0.8,
    book: Book = BOOK,
) -> Issue:
    page = next(page for page in book.pages if quote in page.text)
    at = page.text.index(quote)
    return issue_at(
        book,
        page.span(at, at + len(quote)),
        check=check,
        tier=tier,
        message="a slip",
        confidence=confidence,
        suggestions=readings,
    )


def test_every_error_stands_before_every_query() -> None:
    doubtful = issue("pond", check="grammar/comma-after-opening", confidence=0.4)
    sure = issue("snial", "snail", tier=Tier.QUERY, confidence=0.99)
    assert ranked(BOOK, [sure, doubtful]) == (doubtful, sure)


def test_an_error_that_is_less_than_likely_is_asked() -> None:
    likely, unlikely = issue("pond", confidence=0.6), issue("snial", confidence=0.55)
    asked = asked_where_unsure([likely, unlikely])
    assert [issue.tier for issue in asked] == [Tier.ERROR, Tier.QUERY]
    assert asked[0] == likely


def test_of_two_as_grave_the_surer_is_first() -> None:
    sure, less = issue("late", confidence=0.9), issue("snial", confidence=0.7)
    assert ranked(BOOK, [less, sure]) == (sure, less)


@pytest.mark.parametrize(
    ("graver", "lighter"),
    [
        ("spelling/misspelling", "sentences/missing-stop"),
        ("grammar/confused-words", "sentences/missing-stop"),
        ("sentences/missing-stop", "spacing/space-before-stop"),
        ("speech/missing-closing-mark", "spacing/space-before-stop"),
        ("spacing/space-before-stop", "marks/doubled-mark"),
        ("marks/doubled-mark", "grammar/comma-after-opening"),
    ],
)
def test_of_two_as_sure_the_more_embarrassing_is_first(graver: str, lighter: str) -> None:
    early, late = issue("snial", check=lighter), issue("late", check=graver)
    assert ranked(BOOK, [early, late]) == (late, early)


def test_ties_stand_in_the_order_of_the_book() -> None:
    first, second, third = issue("snial"), issue("pond"), issue("late")
    for order in itertools.permutations([first, second, third]):
        assert ranked(BOOK, order) == (first, second, third)


def test_a_slip_in_a_note_comes_after_the_same_slip_in_the_story() -> None:
    text = "A foks on a hill.\n\nThe foks ran."
    page = Page(
        number=1,
        text=text,
        paragraphs=(
            Paragraph(start=0, end=17, role=Role.NOTE),
            Paragraph(start=19, end=len(text)),
        ),
    )
    book = Book(path="example", title="", pages=(page,))
    note, story = issue("A foks", book=book), issue("The foks", book=book)
    assert ranked(book, [note, story]) == (story, note)


def test_an_unknown_family_has_the_usual_weight_and_a_known_one_its_own() -> None:
    assert weight("weather/rain") == weight("tides/low")
    assert (
        weight("grammar/comma-after-opening")
        < weight("grammar/some-new-check")
        < weight("spelling/new")
    )


def test_every_family_of_checks_has_a_weight_of_its_own() -> None:
    assert all(weight(name) != weight("unknown/family") for name in check_names())


def test_no_check_is_weightless_or_more_than_whole() -> None:
    assert all(0 < weight(name) <= 1 for name in check_names())


def test_issues_about_different_words_are_no_rivals() -> None:
    issues = (issue("snial", "snail"), issue("pond", "lake"), issue("late", "early"))
    assert without_rivals(reversed(issues)) == issues


@pytest.mark.parametrize("words", ["snial", "The snial", "snial went", "nia"])
def test_of_two_that_want_the_same_words_the_surer_stays(words: str) -> None:
    sure = issue("snial", "snail", confidence=0.9)
    rival = issue(words, "lion", check="grammar/agreement", confidence=0.5)
    assert without_rivals([rival, sure]) == (sure,)
    assert without_rivals([sure, rival]) == (sure,)


def test_neighbours_that_only_touch_both_stay() -> None:
    left, right = issue("snial", "snail"), issue(" went", " goes")
    assert without_rivals([right, left]) == (left, right)


def test_the_same_reading_given_twice_is_one_issue_on_the_fewer_words() -> None:
    wide = issue("went too the", "went to the", check="repetition/x", confidence=0.9)
    narrow = issue("too", "to", check="grammar/confused-words", confidence=0.7)
    (kept,) = without_rivals([wide, narrow])
    assert (kept.quote, kept.check, kept.confidence) == ("too", "grammar/confused-words", 0.9)


def test_of_two_as_sure_the_graver_stays() -> None:
    comma = issue("the the", "the, the", check="grammar/comma-after-opening")
    twice = issue("the the", "the", check="repetition/repeated-word")
    assert without_rivals([comma, twice]) == (twice,)


def test_a_remark_on_a_whole_page_leaves_its_words_to_others() -> None:
    text = BOOK.page(1).text
    long_page = issue_at(
        book_of(text + " " + text),
        Span(page=1, start=0, end=2 * len(text) + 1),
        check="reading/heavy-page",
        tier=Tier.QUERY,
        message="a long page for this age",
        confidence=0.9,
    )
    slip = issue("snial", "snail", confidence=0.8)
    assert without_rivals([long_page, slip]) == (long_page, slip)


def test_the_order_in_which_issues_come_makes_no_difference() -> None:
    issues = [
        issue("The snial", "The snail", confidence=0.7),
        issue("snial", "snail", confidence=0.7),
        issue("snial went", "snail goes", confidence=0.7, check="grammar/verb-form"),
        issue("the the", "the", confidence=0.9, check="repetition/repeated-word"),
        issue("too the", "to the", confidence=0.9, check="grammar/confused-words"),
    ]
    outcomes = {without_rivals(order) for order in itertools.permutations(issues)}
    assert len(outcomes) == 1


def test_of_what_only_measures_a_spread_has_one_row_with_the_places_of_its_kind() -> None:
    first = issue("pond", check="verse/line-stumbles", tier=Tier.QUERY, confidence=0.6)
    second = issue("noon", check="verse/line-stumbles", tier=Tier.QUERY, confidence=0.5)
    other = issue("until", check="reading/long-sentence", tier=Tier.QUERY, confidence=0.4)
    slip = issue("snial")
    kept = one_measure_a_spread(BOOK, [first, second, other, slip])
    assert [each.quote for each in kept] == ["snial", "pond"]
    assert kept[1].related == (second.span,)


def test_two_spreads_may_each_have_a_row_that_measures() -> None:
    one = issue("pond", check="reading/long-sentence", tier=Tier.QUERY)
    two = issue("late", check="reading/heavy-spread", tier=Tier.QUERY)
    assert one_measure_a_spread(BOOK, [one, two]) == (one, two)


def test_a_story_without_pages_keeps_all_that_measures() -> None:
    run = replace(BOOK, paginated=False)
    both = (
        issue("pond", check="reading/long-sentence"),
        issue("noon", check="reading/long-sentence"),
    )
    assert one_measure_a_spread(run, both) == both
