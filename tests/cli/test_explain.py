from __future__ import annotations

import pytest
from typer.testing import CliRunner, Result

from proofkit.checks.registry import all_checks, check_names
from proofkit.cli.handbook import sections, set_out, summary
from proofkit.cli.main import app

HANDBOOK = """A goat that is not a goat.

What it finds
    A *goat* which turns out to be a sheep, and that at some length, so that the line must be broken.

    Also a *kid*.

Why a reader minds
    Wool is not hair.

Example
    “Baa,” said the goat.

      Baa!

Better
    “Meh,” said the goat.

When to let it stand
    In a dream.
"""


def explain(*arguments: str) -> Result:
    return CliRunner().invoke(app, ["explain", *arguments], env={"COLUMNS": "100"})


def test_a_handbook_has_its_summary_and_five_sections() -> None:
    assert summary(HANDBOOK) == "A goat that is not a goat."
    assert [section.heading for section in sections(HANDBOOK)] == [
        "What it finds",
        "Why a reader minds",
        "Example",
        "Better",
        "When to let it stand",
    ]


def test_running_text_is_set_to_the_width_and_words_named_get_quotation_marks() -> None:
    assert set_out(sections(HANDBOOK)[0], 44) == (
        "  A “goat” which turns out to be a sheep,\n"
        "  and that at some length, so that the line\n"
        "  must be broken.\n\n"
        "  Also a “kid”."
    )


def test_an_example_keeps_its_lines() -> None:
    assert set_out(sections(HANDBOOK)[2], 30) == "  “Baa,” said the goat.\n\n    Baa!"


@pytest.mark.parametrize("check", all_checks(), ids=check_names())
def test_every_check_can_be_explained(check: object) -> None:
    name = check.name  # type: ignore[attr-defined]  # pytest hides the type
    result = explain(name)
    assert result.exit_code == 0
    assert result.stdout.startswith(f"{name}: ")
    assert "\nWhen to let it stand\n  " in result.stdout
    assert max(map(len, result.stdout.splitlines())) <= 100


def test_without_a_name_all_checks_are_listed_by_family() -> None:
    result = explain()
    assert result.exit_code == 0
    for check in all_checks():
        assert f"\n  {check.name}\n" in result.stdout
        assert f"\n{check.family}\n" in f"\n{result.stdout}"


def test_a_family_lists_its_own_checks() -> None:
    family = all_checks()[0].family
    listed = explain(family).stdout
    for check in all_checks():
        assert (f"\n  {check.name}\n" in listed) is (check.family == family)


def test_a_name_nearly_right_brings_the_near_ones() -> None:
    name = check_names()[0]
    result = explain(name + "s")
    assert result.exit_code == 2
    assert f"Did you mean {name}" in result.stderr


def test_a_name_far_off_brings_the_way_to_the_list() -> None:
    result = explain("zzzz")
    assert result.exit_code == 2
    assert result.stderr == (
        "There is no check called “zzzz”. To see all of them: proofkit explain\n"
    )
