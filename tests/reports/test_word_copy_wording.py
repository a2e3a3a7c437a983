"""What the comments of the Word copy say."""

from __future__ import annotations

from dataclasses import replace

import pytest

from proofkit.book import Span
from proofkit.issue import Tier
from proofkit.reports.keys import short_keys
from proofkit.reports.word_copy.wording import comment_text
from tests.reports.goat import goat

GOAT = goat()


def said(check: str, beside: str = "", *suggestions: str) -> str:
    issue = next(issue for issue in GOAT.issues if issue.check == check)
    issue = replace(issue, suggestions=suggestions or issue.suggestions)
    return comment_text(GOAT, issue, "k7f2", beside)


@pytest.mark.parametrize(
    ("check", "text"),
    [
        ("grammar/confused-words", "Read “from”. A wrong word that is a word. [k7f2]"),
        ("grammar/its", "Read “Its”. “it’s” means “it is”; the light is its own. [k7f2]"),
        ("speech/not-closed", "Read ›lamp?”‹. Speech that is opened and not closed. [k7f2]"),
        ("spacing/two-spaces", "Read “she took”. Two spaces between words. [k7f2]"),
        (
            "consistency/name-spelt-two-ways",
            "Query: elsewhere the book has Mr (4 times). Read “Mr”? [k7f2]",
        ),
        (
            "reading/heavy-spread",
            "Query: 63 words, where no other spread has more than 23. Let it stand? [k7f2]",
        ),
    ],
)
def test_an_error_is_corrected_and_a_query_asked(check: str, text: str) -> None:
    assert said(check) == text


def test_several_readings_are_offered() -> None:
    text = said("grammar/confused-words", "", "from", "off", "")
    assert text == "Read “from” or “off” or nothing. A wrong word that is a word. [k7f2]"


def test_taking_out_is_said_in_words() -> None:
    assert said("repetition/doubled-word", "", "").startswith("Take it out. A word twice.")


def test_beside_the_text_the_words_at_fault_are_said() -> None:
    text = said("grammar/confused-words", "footnote")
    assert text == "In the footnote: for “form” read “from”. A wrong word that is a word. [k7f2]"
    assert said("reading/heavy-spread", "text box").startswith("Query: in the text box, “But one")


def test_other_places_are_named_once() -> None:
    issue = next(i for i in GOAT.issues if i.tier is Tier.QUERY)
    spans = tuple(Span(page=page, start=0, end=4) for page in (3, 4))
    text = comment_text(GOAT, replace(issue, related=spans), short_keys(GOAT)[issue.key])
    assert "Also on spreads 2 and 3." in text
    assert text.rpartition(" [")[0].endswith("?")
