from __future__ import annotations

import pytest

from proofkit.issue import Tier
from proofkit.report import RankedIssue
from proofkit.reports.excerpt import excerpt
from tests.reports.slips import slip as issue

PAGE = (
    "Nell looked at the steps.\n\n"
    "Then she took the box in her teeth, and up she went, past the window and past the clock.\n\n"
    "Clip-clop."
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


def test_a_matter_of_the_whole_page_marks_no_word() -> None:
    page = "Up she went, past the window and past the clock."
    whole = RankedIssue(
        rank=1, key="k", check="pages/numbers-out-of-order", tier=Tier.QUERY, page=1, start=0, end=0,
        quote="", message="spread 3 comes twice", confidence=0.9,
    )  # fmt: skip
    assert str(excerpt(page, whole, 30)) == "Up she went, past the …"
