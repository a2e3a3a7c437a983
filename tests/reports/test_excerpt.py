from __future__ import annotations

import pytest

from proofkit.issue import Tier
from proofkit.report import RankedIssue
from proofkit.reports.excerpt import excerpt, readings

PAGE = (
    "Nell looked at the steps.\n\n"
    "Then she took the box in her teeth, and up she went, past the window and past the clock.\n\n"
    "Clip-clop."
)


def issue(page: str, quote: str, *suggestions: str) -> RankedIssue:
    start = page.index(quote)
    return RankedIssue(
        rank=1,
        key="k7f2bcd",
        check="spelling/slip",
        tier=Tier.ERROR,
        page=1,
        start=start,
        end=start + len(quote),
        quote=quote,
        message="a slip",
        suggestions=suggestions,
        confidence=0.9,
    )


def test_a_short_line_is_shown_whole_and_no_other_paragraph() -> None:
    shown = excerpt(PAGE, issue(PAGE, "steps", "stairs"), 60)
    assert str(shown) == "Nell looked at the ›steps‹."


def test_a_long_line_is_cut_between_words_on_both_sides() -> None:
    shown = excerpt(PAGE, issue(PAGE, "teeth", "jaws"), 36)
    assert str(shown) == "… box in her ›teeth‹, and up she …"


@pytest.mark.parametrize("width", range(12, 100))
def test_no_width_costs_the_words_at_fault_or_is_overrun(width: int) -> None:
    shown = excerpt(PAGE, issue(PAGE, "teeth", "jaws"), width)
    assert shown.quote == "teeth"
    assert len(str(shown)) <= width
    for word in f"{shown.before} {shown.after}".replace("…", " ").split():
        assert word in PAGE.split() or word in {"teeth,", ","}


def test_what_room_one_side_leaves_the_other_takes() -> None:
    shown = excerpt(PAGE, issue(PAGE, "Then", "And"), 60)
    assert str(shown) == "›Then‹ she took the box in her teeth, and up she went, …"


def test_a_passage_without_a_reading_is_cut_in_its_middle() -> None:
    passage = PAGE.split("\n\n")[1]
    shown = excerpt(PAGE, issue(PAGE, passage), 40)
    assert str(shown) == "›Then she took the … past the clock.‹"


def test_words_to_be_replaced_get_two_lines_before_they_are_cut() -> None:
    quote = "she took the box in her teeth, and up she went"
    shown = excerpt(PAGE, issue(PAGE, quote, "up she went"), 30)
    assert shown.quote == quote


def test_line_ends_are_shown_as_spaces() -> None:
    page = "Round and round\nthe the light goes"
    assert str(excerpt(page, issue(page, "the the", "the"), 60)) == (
        "Round and round ›the the‹ light goes"
    )


@pytest.mark.parametrize(
    ("quote", "reading", "quote_shown", "reading_shown"),
    [
        ("key .", "key.", "key␣.", "key."),
        ("she  took", "she took", "she␣␣took", "she took"),
        ("said,he", "said, he", "said,he", "said,␣he"),
        ("  ", " ", "␣␣", "(one space)"),
        ("\t", " ", "␣", "(one space)"),
        (" ", "", "␣", "(no space)"),
        ("\N{NO-BREAK SPACE}a", " a", "␣a", "␣a"),
    ],
)
def test_where_the_fix_is_a_space_spaces_can_be_seen(
    quote: str, reading: str, quote_shown: str, reading_shown: str
) -> None:
    page = f"x{quote}x"
    found = issue(page, quote, reading)
    assert excerpt(page, found, 60).quote == quote_shown
    assert readings(found) == (reading_shown,)


def test_a_space_between_two_words_needs_no_sign() -> None:
    found = issue("her bed time story", "bed time", "bedtime", "bed-time")
    assert excerpt("her bed time story", found, 60).quote == "bed time"
    assert readings(found) == ("bedtime", "bed-time")


def test_taking_words_out_is_said_in_words() -> None:
    assert readings(issue(PAGE, "past", "")) == ("(take out)",)


def test_a_place_between_two_characters_is_marked() -> None:
    page = "Up she went"
    between = RankedIssue(
        rank=1, key="k", check="sentences/no-stop", tier=Tier.ERROR, page=1, start=11, end=11,
        quote="", message="no full stop", suggestions=(".",), confidence=0.9,
    )  # fmt: skip
    assert str(excerpt(page, between, 60)) == "Up she went›‹"
    assert readings(between) == (".",)
