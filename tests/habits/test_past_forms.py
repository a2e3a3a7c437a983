"""Past forms in -t and -ed, by verb, without the adjectives."""

from __future__ import annotations

import pytest

from proofkit.analysis import Analysis, PageAnalysis, Token
from proofkit.habits.past_forms import ED, T, usage, verbs
from proofkit.settings import English
from proofkit.words.vocabulary import vocabulary_of
from tests.marked import book_of


def counts(text: str) -> dict[str, dict[str, int]]:
    book = book_of(text)
    analysis = Analysis(english=English.BRITISH, vocabulary=vocabulary_of(book))
    return {v.matter: {form: v.count(form) for form in v.places} for v in verbs(book, analysis)}


def test_each_verb_has_its_own_places() -> None:
    text = "She learnt it. He learned it, and learned it well. They leapt."
    assert counts(text) == {"learn": {T: 1, ED: 2}, "leap": {T: 1}}


@pytest.mark.parametrize(
    "text",
    [
        "The learned owl blinked.",
        "It reeked of burnt toast.",
        "Her very learned friend came.",
        "A half burnt candle stood there.",
        "No use crying over spilt milk.",
        "“Spoilt children!” said the queen.",
        "They baked with spelt flour.",
        "Mr Leaned met Miss Leaned.",
        "A well-spoilt cat purred.",
    ],
)
def test_adjectives_and_names_do_not_count(text: str) -> None:
    assert counts(text) == {}


@pytest.mark.parametrize(
    ("text", "verb"),
    [
        ("The soup burned her tongue.", "burn"),
        ("The dog that learned to sing was there.", "learn"),
        ("This spoilt the game.", "spoil"),
        ("Burnt it? No!", "burn"),
        ("Nobody spilt soup.", "spill"),
    ],
)
def test_verbs_count(text: str, verb: str) -> None:
    assert list(counts(text)) == [verb]


def test_the_language_model_tells_an_adjective_that_its_neighbours_do_not() -> None:
    book = book_of("He ate burnt toast.")
    vocabulary = vocabulary_of(book)
    token = Token(
        text="burnt", start=7, end=12, lemma="burnt", tag="VBN", pos="VERB", dep="amod", head=0
    )
    pages = (PageAnalysis(tokens=(token,)),)
    bare = Analysis(english=English.BRITISH, vocabulary=vocabulary)
    read = Analysis(english=English.BRITISH, vocabulary=vocabulary, pages=pages)
    assert usage(book, bare).count(T) == 1
    assert usage(book, read).count(T) == 0
