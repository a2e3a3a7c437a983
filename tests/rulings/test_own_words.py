from __future__ import annotations

import pytest

from proofkit.rulings.own_words import is_settled, still_idle, unsettled
from proofkit.rulings.ruling import Ruling
from proofkit.style import Style
from proofkit.words.confirm import WordToConfirm
from tests.rulings.drafts import book_of, issue

STYLE = Style(words=("honk-a-lonk", "don’t"), names=("Mr Tibbs", "Zoë"))


def to_confirm(*words: str) -> list[WordToConfirm]:
    return [WordToConfirm(word=word, count=1, pages=(1,)) for word in words]


@pytest.mark.parametrize(
    ("word", "check", "settled"),
    [
        ("honk-a-lonk", "spelling/misspelling", True),
        ("Honk-a-lonk!", "spelling/misspelling", True),
        ("Tibbs", "words/wrong-word", True),
        ("don't", "spelling/joined-words", True),
        ("honk-a-lunk", "spelling/misspelling", False),
        ("honk-a-lonk", "consistency/compound-two-ways", False),
        ("honk-a-lonk honk-a-lonk", "spelling/misspelling", False),
    ],
)
def test_a_word_that_stands_as_decided_is_no_misspelling(
    word: str,
    check: str,
    settled: bool,  # noqa: FBT001 - what is expected
) -> None:
    book = book_of(f"One {word} more")
    at = book.page(1).span(4, 4 + len(word))
    assert is_settled(issue(book, at, check=check), STYLE) is settled


def test_what_is_decided_or_let_stand_needs_no_confirming() -> None:
    words = to_confirm("Tibbs", "honk-a-lonk", "Fffft", "gonna", "’im")
    rulings = (Ruling(at="", word="gonna"), Ruling(at="", check="a/b"))
    assert [each.word for each in unsettled(words, STYLE, rulings)] == ["Fffft", "’im"]
    assert unsettled(words, Style(), ()) == tuple(words)


def test_a_ruling_on_a_word_to_confirm_is_not_idle() -> None:
    rulings = (
        Ruling(at="", word="Gonna"),
        Ruling(at="", word="other"),
        Ruling(at="", key="k7f2bcd"),
    )
    assert still_idle(rulings, to_confirm("gonna")) == rulings[1:]
