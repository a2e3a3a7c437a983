"""Words that the book spells in two of the ways that its English has."""

from __future__ import annotations

import pytest

from proofkit.analysis import Analysis
from proofkit.habits.accepted_spellings import mixed_usages
from proofkit.settings import English
from proofkit.words.vocabulary import vocabulary_of
from tests.marked import book_of

BRITISH, AMERICAN = English.BRITISH, English.AMERICAN


def mixed(text: str, english: English) -> dict[str, dict[str, int]]:
    analysis = Analysis(english=english, vocabulary=vocabulary_of(book_of(text)))
    return {u.matter: {form: u.count(form) for form in u.places} for u in mixed_usages(analysis)}


def test_each_spelling_with_its_places_under_the_preferred_one() -> None:
    text = "An advisor, two advisers, an adviser and an adviser."
    assert mixed(text, BRITISH) == {"adviser": {"adviser": 2, "advisor": 1}}


def test_what_is_accepted_depends_on_the_english() -> None:
    text = "A catalog and a catalogue."
    assert mixed(text, AMERICAN) == {"catalog": {"catalog": 1, "catalogue": 1}}
    assert mixed(text, BRITISH) == {}


@pytest.mark.parametrize(
    "text",
    [
        "An adviser, and another adviser.",
        "Mr Adviser had an advisor.",
        "A mat with matte paint.",
        "She realised it, and realized it, and learnt, and learned.",
        "He ran towards it, toward it.",
    ],
)
def test_nothing_is_mixed_or_another_habit_tells_it(text: str) -> None:
    for english in English:
        assert mixed(text, english) == {}
