"""What the author decided goes before what the book mostly does, even where the book is of one mind."""

from __future__ import annotations

import pytest

from proofkit.analysis import Analysis
from proofkit.checks.registry import check_named
from proofkit.issue import Issue, Tier
from proofkit.settings import English, Settings
from proofkit.style import Style
from proofkit.words.vocabulary import vocabulary_of
from tests.marked import book_of


def found(name: str, text: str, style: Style) -> list[Issue]:
    check = check_named(f"consistency/{name}")
    assert check is not None
    book = book_of(text)
    analysis = Analysis(english=English.BRITISH, vocabulary=vocabulary_of(book))
    return list(check.find(book, analysis, Settings(style=style)))


@pytest.mark.parametrize(
    ("name", "text", "forms", "better"),
    [
        ("okay-two-ways", "Okay, said Bo. It was okay.", {"ok": "OK"}, "OK"),
        ("number-two-ways", "Two hens sat on five eggs.", {"numbers": "in figures"}, "2"),
        ("number-two-ways", "She saw 30 hens.", {"numbers": "in words"}, "thirty"),
        ("ordinal-two-ways", "The third hen sat.", {"ordinals": "in figures"}, "3rd"),
        ("thousand-two-ways", "He saw 1000 hens.", {"thousands": "with a comma"}, "1,000"),
        ("date-two-ways", "It was 3 May.", {"dates": "May 3rd"}, "May 3rd"),
        ("time-two-ways", "It was 7.30.", {"times-in-figures": "5:30"}, "7:30"),
        ("time-two-ways", "It was 7 o’clock.", {"hour-before-o-clock": "in words"}, "seven"),
        ("time-two-ways", "It was 7pm.", {"a-m-and-p-m": "7 p.m."}, "7 p.m"),
    ],
)
def test_decided_forms(name: str, text: str, forms: dict[str, str], better: str) -> None:
    (issue,) = found(name, text, Style(forms=forms))
    assert issue.suggestions == (better,)
    assert issue.tier is Tier.ERROR
    assert issue.message.startswith("your style sheet has ")


def test_decided_words() -> None:
    (issue,) = found("okay-two-ways", "Okay, said Bo. It was okay.", Style(words=("OK",)))
    assert issue.suggestions == ("OK",)
    assert len(issue.related) == 1


def test_a_decided_sound() -> None:
    (issue,) = found("sound-spelt-two-ways", "Woosh! Up went the kite.", Style(words=("Whoosh",)))
    assert (issue.quote, issue.suggestions) == ("Woosh", ("Whoosh",))
    assert not found("sound-spelt-two-ways", "Whoosh! Up it went.", Style(words=("Whoosh",)))


def test_equal_numbers_ask() -> None:
    (issue,) = found("okay-two-ways", "OK, said Bo. It was okay.", Style())
    assert issue.tier is Tier.QUERY
    assert issue.message == "the book has both OK and okay"
