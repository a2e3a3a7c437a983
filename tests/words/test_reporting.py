from __future__ import annotations

import pytest

from proofkit.words.abbreviations import ends_in_abbreviation
from proofkit.words.persons import sentence_spans, speaks_in_person
from proofkit.words.reporting import has_reporting_verb, reports


@pytest.mark.parametrize(
    "after",
    [
        " said the fox.",
        " he whispered.",
        " a small voice called.",
        " the old brown bear grumbled",
        " Mabel said.",
        " Mrs. Quill asked",
        " she quietly replied",
    ],
)
def test_says_who_spoke(after: str) -> None:
    assert reports(after)


@pytest.mark.parametrize(
    "after",
    [
        " he ran home.",
        " and the fox ran.",
        " the fox began to run",
        " he went home",
        " The fox had a hat.",
        "",
        " he continued pulling the rope",
    ],
)
def test_says_nothing_of_who_spoke(after: str) -> None:
    assert not reports(after)


def test_verbs_of_manner_report_only_loosely() -> None:
    assert not reports(" he smiled.")
    assert reports(" he smiled.", loosely=True)


def test_finds_a_verb_of_saying_in_any_form() -> None:
    assert has_reporting_verb("the owl, remarking that")
    assert not has_reporting_verb("the owl sat on its branch")


def test_a_short_form_ends_no_sentence() -> None:
    assert ends_in_abbreviation("I met Mrs.")
    assert ends_in_abbreviation("from the U.S.")
    assert not ends_in_abbreviation("It was I.")
    assert not ends_in_abbreviation("It was wet.")
    text = "I met Mr. Fox. He ran."
    assert [text[a:b].strip() for a, b in sentence_spans(text)] == ["I met Mr. Fox.", "He ran."]


def test_tells_a_speaker_from_the_narrator() -> None:
    assert speaks_in_person("I am late.")
    assert speaks_in_person("Stop!")
    assert not speaks_in_person("The fox was late.")
