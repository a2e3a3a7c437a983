"""What becomes of a match, with matches made by hand: the engine isn't asked."""

from __future__ import annotations

import pytest

from proofkit.analysis import Analysis, Match
from proofkit.checks.registry import check_named
from proofkit.issue import Issue, Tier
from proofkit.settings import English, Settings
from proofkit.words.vocabulary import vocabulary_of
from tests.marked import Example, example

ENGINE_SAYS = "The engine's own words."


def found(
    marked: str, check: str, rule: str, *readings: str, category: str = "GRAMMAR"
) -> list[Issue]:
    """The check's issues where the engine marks each place in ``marked``."""
    book = example(marked)
    return list(
        issues(book, check, [matched(place, rule, readings, category) for place in spans(book)])
    )


def spans(marked: Example) -> list[tuple[int, int, int]]:
    return [(p.span.page, p.span.start, p.span.end) for p in marked.places]


def matched(
    place: tuple[int, int, int], rule: str, readings: tuple[str, ...], category: str
) -> Match:
    page, start, end = place
    return Match(
        page=page,
        start=start,
        end=end,
        rule=rule,
        category=category,
        message=ENGINE_SAYS,
        replacements=readings,
    )


def issues(marked: Example, check: str, matches: list[Match]) -> list[Issue]:
    checker = check_named(check)
    assert checker is not None
    analysis = Analysis(
        english=English.BRITISH,
        vocabulary=vocabulary_of(marked.book),
        matches=tuple(matches),
    )
    return list(checker.find(marked.book, analysis, Settings()))


def test_the_words_are_ours_and_the_readings_the_engine_s() -> None:
    (issue,) = found("The hens ›was‹ late.", "grammar/agreement", "HE_VERB_AGR", "is", "were")
    assert issue.message == "the verb doesn't go with its subject"
    assert issue.suggestions == ("were", "is")
    assert issue.tier is Tier.ERROR


def test_a_check_leaves_other_checks_matches_alone() -> None:
    assert found("The hens ›was‹ late.", "grammar/number", "HE_VERB_AGR", "were") == []


@pytest.mark.parametrize(
    "story",
    [
        '"The hens ›was‹ late," said the troll.',
        "The hens ›was‹ runnin' late.",
        "The hens ›was‹ zimbo and wallawo and late.",
        "The hens ›was‹-was late.",
        "So ›was‹ was the word.",
    ],
    ids=["speech", "dialect", "another language", "broken off", "twice"],
)
def test_what_a_story_may_do_is_left_alone(story: str) -> None:
    assert found(story, "grammar/agreement", "HE_VERB_AGR", "were") == []


def test_a_name_is_left_alone() -> None:
    story = "We met Two ›Barks‹ there. Only Barks knew Barks."
    assert found(story, "grammar/phrase", "A_RULE", "Bark") == []


def test_a_day_of_the_week_is_no_name() -> None:
    assert found("They met ›in Monday‹ last.", "grammar/preposition", "IN_WEEKDAY", "on Monday")


def test_a_refrain_is_one_issue_and_two_slips_are_two() -> None:
    refrain = "The hens ›was‹ late.\n---\nThe hens ›was‹ late.\n---\nThe ducks ›was‹ early."
    first, second = found(refrain, "grammar/agreement", "HE_VERB_AGR", "were")
    assert [span.page for span in first.related] == [2]
    assert second.span.page == 3
    assert second.related == ()


def test_house_style_is_one_row_for_the_book() -> None:
    story = "They slept› and‹ it rained.\n---\nThey woke› and‹ the sun shone."
    rule, check = "COMMA_COMPOUND_SENTENCE", "grammar/comma-between-clauses"
    (issue,) = found(story, check, rule, ", and", category="PUNCTUATION")
    assert [span.page for span in issue.related] == [2]
    assert issue.tier is Tier.QUERY


def test_speech_turns_an_error_of_the_table_into_a_query_and_lowers_its_confidence() -> None:
    rule, check = "EN_A_VS_AN", "grammar/article"
    (told,) = found("There was ›a‹ owl.", check, rule, "an", category="MISC")
    (said,) = found('"It was ›a‹ owl," said Jo.', check, rule, "an", category="MISC")
    assert (told.tier, said.tier) == (Tier.ERROR, Tier.QUERY)
    assert said.confidence < told.confidence
