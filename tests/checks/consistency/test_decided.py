"""What the author decided comes before what the book mostly does."""

from __future__ import annotations

from types import ModuleType

import pytest

from proofkit.analysis import Analysis
from proofkit.checks.consistency import (
    broken_off_two_ways,
    dash_two_ways,
    ellipsis_spaced_two_ways,
    ellipsis_two_ways,
    marks_curly_and_straight,
    quotation_marks_two_ways,
    speaker_two_ways,
    stop_and_mark_two_ways,
)
from proofkit.habits import (
    broken_off,
    dash,
    ellipsis,
    mark_shape,
    quotation_marks,
    space_before_ellipsis,
    speech_layout,
    stop_and_mark,
)
from proofkit.issue import Issue, Tier
from proofkit.settings import English, Settings
from proofkit.style import Style
from proofkit.words.vocabulary import vocabulary_of
from tests.marked import book_of

# The check, the matter, the form decided, a text all in another form, and its first reading.
CASES = [
    (dash_two_ways, dash, "em rule", "The hen – and the fox – ran.", "—"),
    (dash_two_ways, dash, "spaced en rule", "The hen—and the fox—ran.", " – "),
    (dash_two_ways, dash, "spaced en rule", "The hen -- and the fox -- ran.", "–"),
    (broken_off_two_ways, broken_off, "em rule", "“But I –” said the hen.", "—"),
    (broken_off_two_ways, broken_off, "spaced en rule", "“But I—” said the hen.", " –"),
    (ellipsis_two_ways, ellipsis, "one character", "So... it was... late.", "…"),
    (ellipsis_spaced_two_ways, space_before_ellipsis, "a space", "So… it was… late.", " …"),
    (marks_curly_and_straight, mark_shape, "curly", "Goose's hat isn't here.", "’"),
    (quotation_marks_two_ways, quotation_marks, "single", "“Oh,” said the hen.", "‘Oh,’"),
    (stop_and_mark_two_ways, stop_and_mark, "outside", "He calls it “a hat.”", "hat”."),
]


def found(check: ModuleType, text: str, forms: dict[str, str]) -> list[Issue]:
    book = book_of(text)
    analysis = Analysis(english=English.BRITISH, vocabulary=vocabulary_of(book))
    return list(check.find(book, analysis, Settings(style=Style(forms=forms))))


@pytest.mark.parametrize(("check", "habit", "form", "text", "reading"), CASES)
def test_a_decision_overrides_the_book(
    check: ModuleType, habit: ModuleType, form: str, text: str, reading: str
) -> None:
    assert found(check, text, {}) == []
    (issue,) = found(check, text, {habit.MATTER: form})
    assert issue.suggestions == (reading,)
    assert "your style sheet has" in issue.message


@pytest.mark.parametrize(("check", "habit", "form", "text", "reading"), CASES)
def test_a_form_that_is_none_is_left_to_the_rulings(
    check: ModuleType, habit: ModuleType, form: str, text: str, reading: str
) -> None:
    assert found(check, text, {habit.MATTER: "upside down"}) == []


def test_new_speakers_by_decision() -> None:
    text = '"Who?" asked Mole. "Only me," said Hare.'
    assert found(speaker_two_ways, text, {}) == []
    (issue,) = found(speaker_two_ways, text, {speech_layout.MATTER: "new paragraph"})
    assert issue.quote == '"Only me,"'


def test_a_thin_majority_only_asks() -> None:
    text = "One – two. One – two. One – two. One—two."
    (clear,) = found(dash_two_ways, text, {})
    (thin,) = found(dash_two_ways, text.replace(" – two. One – two.", " – two. One—two.", 1), {})
    assert (clear.tier, thin.tier) == (Tier.ERROR, Tier.QUERY)
    assert thin.confidence < clear.confidence


def test_all_odd_places_are_one_row() -> None:
    text = "So… it… was… so… late… and… dark... and so... cold."
    (issue,) = found(ellipsis_two_ways, text, {})
    assert issue.quote == "..."
    assert len(issue.related) == 1
    assert "6 times" in issue.message
