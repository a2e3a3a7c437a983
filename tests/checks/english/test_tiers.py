"""How sure the English family is, and what it puts into one row."""

from __future__ import annotations

import pytest

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.checks.english import mixed_ise_ize, other_spelling, past_forms
from proofkit.issue import Issue, Tier
from proofkit.settings import English, Settings
from proofkit.style import Style
from proofkit.words.english import english_of
from proofkit.words.vocabulary import vocabulary_of
from tests.marked import book_of

CLEARLY_BRITISH = "My favourite colour is grey, said the neighbour in her pyjamas."


def issues(book: Book, chosen: English | None = None) -> list[Issue]:
    vocabulary = vocabulary_of(book)
    analysis = Analysis(english=chosen or english_of(book, vocabulary), vocabulary=vocabulary)
    return list(other_spelling.find(book, analysis, Settings(english=chosen)))


@pytest.mark.parametrize(
    ("text", "chosen", "tier"),
    [
        (CLEARLY_BRITISH + " They plowed on.", None, Tier.ERROR),
        ("The harbour was full of color.", None, Tier.QUERY),
        ("The harbour was full of color.", English.BRITISH, Tier.ERROR),
        ("The neighbor had a grey hat.", English.AMERICAN, Tier.QUERY),  # grey is known there
        ("The neighbor had a good harbour.", English.AMERICAN, Tier.ERROR),
        ("They rolled the tire away.", English.BRITISH, Tier.QUERY),  # told by its neighbours only
    ],
)
def test_tier(text: str, chosen: English | None, tier: Tier) -> None:
    (issue,) = issues(book_of(text), chosen)
    assert issue.tier is tier


def test_a_book_wholly_in_one_english_is_silent_until_the_other_is_chosen() -> None:
    book = book_of("Her neighbors wore gray pajamas.")
    assert not issues(book)
    assert len(issues(book, English.BRITISH)) == 3


def test_a_word_all_through_the_book_is_one_row() -> None:
    (issue,) = issues(book_of(CLEARLY_BRITISH, "A gray cat.", "Gray rain, gray sky."))
    assert issue.suggestions == ("grey",)
    assert [span.page for span in issue.related] == [3, 3]


def test_ise_and_ize_in_an_american_book_is_no_mixture() -> None:
    book = book_of("She realized it. He organised it.")
    vocabulary = vocabulary_of(book)
    for english, rows in ((English.BRITISH, 1), (English.AMERICAN, 0)):
        analysis = Analysis(english=english, vocabulary=vocabulary)
        assert len(list(mixed_ise_ize.find(book, analysis, Settings()))) == rows


def decided(book: Book, english: English, **forms: str) -> tuple[Analysis, Settings]:
    """What a check is asked with, where the style sheet has these forms."""
    names = {"ending": "-ise or -ize", "past": "past forms"}
    style = Style(forms={names[matter]: form for matter, form in forms.items()})
    analysis = Analysis(english=english, vocabulary=vocabulary_of(book))
    return analysis, Settings(english=english, style=style)


@pytest.mark.parametrize(("form", "wrong"), [("-ise", "organized"), ("-ize", "realised")])
def test_a_decided_ending_comes_before_the_majority(form: str, wrong: str) -> None:
    book = book_of("She realised it, and realised more. He organized it. They were surprised.")
    (issue,) = mixed_ise_ize.find(book, *decided(book, English.BRITISH, ending=form))
    assert issue.quote == wrong
    assert issue.message == f"your style sheet has {form}"
    assert issue.tier is Tier.ERROR


def test_a_decided_ending_is_not_asked_about_as_the_other_english() -> None:
    book = book_of("The color of the gray neighbor. She realised it.")
    analysis, settings = decided(book, English.AMERICAN, ending="-ise")
    assert not list(other_spelling.find(book, analysis, settings))
    assert not list(mixed_ise_ize.find(book, analysis, settings))


@pytest.mark.parametrize(
    ("form", "suggestions"), [("-ed", ["learned", "Dreamed"]), ("-t", ["Burnt"])]
)
def test_decided_past_forms_count_for_every_verb(form: str, suggestions: list[str]) -> None:
    book = book_of("She learnt it. Dreamt it? Burned it?")
    issues = past_forms.find(book, *decided(book, English.BRITISH, past=form))
    assert sorted(i.suggestions[0] for i in issues) == sorted(suggestions)


def test_british_past_forms_are_queries_in_an_american_book() -> None:
    book = book_of("She learnt it, and leapt. Burnt toast! The gray neighbor dreamed in color.")
    (issue,) = past_forms.find(book, *decided(book, English.AMERICAN))
    assert (issue.quote, issue.suggestions, issue.tier) == ("learnt", ("learned",), Tier.QUERY)


def test_a_word_of_the_style_sheet_stands_as_it_is_there() -> None:
    book = book_of("My favourite gray neighbour had a color.")
    settings = Settings(english=English.BRITISH, style=Style(words=("gray",)))
    analysis = Analysis(english=English.BRITISH, vocabulary=vocabulary_of(book))
    assert [i.quote for i in other_spelling.find(book, analysis, settings)] == ["color"]
