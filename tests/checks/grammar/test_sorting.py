"""The table that sorts the grammar engine's rules."""

from __future__ import annotations

from collections import Counter

import pytest

from proofkit.analysis import Match
from proofkit.checks.grammar._sorting import (
    ADMITTED,
    CATEGORIES_LEFT_OUT,
    LEFT_OUT,
    SORTED,
    named_rules,
    sort_of,
)
from proofkit.checks.registry import check_names
from proofkit.issue import Tier


def match(rule: str, category: str = "GRAMMAR") -> Match:
    return Match(page=1, start=0, end=3, rule=rule, category=category, message="")


def test_every_row_belongs_to_a_check_that_exists() -> None:
    assert {row.check for row in (*SORTED, *ADMITTED.values())} <= set(check_names())


def test_no_rule_is_named_twice() -> None:
    assert [rule for rule, count in Counter(named_rules()).items() if count > 1] == []


def test_no_category_is_both_admitted_and_left_out() -> None:
    assert not ADMITTED.keys() & CATEGORIES_LEFT_OUT.keys()


def test_a_doubtful_row_is_a_query_and_a_row_never_grows_surer_in_speech() -> None:
    for row in SORTED:
        assert 0.35 <= row.confidence <= 1
        assert row.tier is Tier.QUERY or row.confidence >= 0.6
        assert not (row.tier is Tier.QUERY and row.spoken is Tier.ERROR)


@pytest.mark.parametrize(
    ("rule", "category", "check"),
    [
        ("EN_A_VS_AN", "MISC", "grammar/article"),
        ("HE_VERB_AGR", "GRAMMAR", "grammar/agreement"),
        ("COMPOUND_NNP_AGREEMENT", "GRAMMAR", "grammar/agreement"),
        ("TO_TOO", "CONFUSED_WORDS", "grammar/confused-words"),
        ("A_RULE_OF_TOMORROW", "GRAMMAR", "grammar/phrase"),
        ("COMMA_COMPOUND_SENTENCE_2", "PUNCTUATION", "grammar/comma-between-clauses"),
    ],
)
def test_a_match_goes_to_its_check(rule: str, category: str, check: str) -> None:
    sort = sort_of(match(rule, category))
    assert sort is not None
    assert sort.check == check


@pytest.mark.parametrize(
    ("rule", "category"),
    [
        ("SOME_RULE", "STYLE"),
        ("A_NEW_RULE", "A_NEW_CATEGORY"),
        ("EN_UNPAIRED_QUOTES", "PUNCTUATION"),
        ("SUNDAY_COMPOUNDS", "GRAMMAR"),
        ("KIND_OF_A", "GRAMMAR"),
        ("EN_DIACRITICS_REPLACE_ORTHOGRAPHY_FETE", "TYPOS"),
    ],
)
def test_what_does_not_suit_a_story_is_left_out(rule: str, category: str) -> None:
    assert sort_of(match(rule, category)) is None


def test_a_row_that_names_a_rule_outweighs_a_pattern_that_leaves_it_out() -> None:
    named = {rule for row in SORTED for rule in row.rules.split() if "*" not in rule}
    assert all(sort_of(match(rule)) is not None for rule in named)


def test_every_reason_names_rules() -> None:
    assert all(reason.strip() and rules.split() for reason, rules in LEFT_OUT.items())
