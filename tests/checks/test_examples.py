"""Every check speaks where its examples say so, says what they say, and is silent elsewhere.

The examples of ``family/pattern`` stand in ``tests/checks/family/pattern.md``, under "Must speak" and
"Must stay silent": one example to each block of lines, blocks parted by blank lines. A line that
starts with ``>`` says why. A blank line inside an example is written as a line of ``¶``.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from proofkit.analysis import Analysis
from proofkit.checks.check import Check, Need
from proofkit.checks.registry import all_checks, check_names
from proofkit.settings import English, Settings
from proofkit.words.vocabulary import vocabulary_of
from tests.marked import Example, example

HERE = Path(__file__).parent
HEADINGS = ("What it finds", "Why a reader minds", "Example", "Better", "When to let it stand")


def blocks(check: Check, section: str) -> list[str]:
    """The examples of one section of a check's file."""
    text = (HERE / f"{check.name}.md").read_text(encoding="utf-8")
    part = text.partition(f"## {section}\n")[2].partition("\n## ")[0]
    plain = "\n".join(line for line in part.splitlines() if not line.startswith(">"))
    return [block.replace("\n¶\n", "\n\n") for block in plain.split("\n\n") if block.strip()]


def cases(*, engines: bool) -> list[object]:
    """All examples of the checks that need the engines, or of those that need only text."""
    return [
        pytest.param(check, block, id=f"{check.name}-{section.split()[1]}-{number}")
        for check in all_checks()
        if (check.needs != frozenset({Need.TEXT})) is engines
        for section in ("Must speak", "Must stay silent")
        for number, block in enumerate(blocks(check, section), 1)
    ]


def assert_as_marked(check: Check, marked: Example, analysis: Analysis) -> None:
    """The check finds just the marked places, and its first suggestions are the marked readings."""
    issues = sorted(check.find(marked.book, analysis, Settings()), key=lambda issue: issue.span)
    assert [(i.span.page, i.quote) for i in issues] == [
        (p.span.page, p.quote) for p in marked.places
    ]
    assert [i.span for i in issues] == [p.span for p in marked.places]
    for issue, place in zip(issues, marked.places, strict=True):
        assert issue.check == check.name
        if place.readings is not None:
            assert issue.suggestions[: len(place.readings)] == place.readings


@pytest.mark.parametrize(("check", "block"), cases(engines=False))
def test_text_checks(check: Check, block: str) -> None:
    marked = example(block)
    analysis = Analysis(english=English.BRITISH, vocabulary=vocabulary_of(marked.book))
    assert_as_marked(check, marked, analysis)


@pytest.mark.parametrize("check", all_checks(), ids=check_names())
def test_as_many_silent_examples_as_speaking_ones(check: Check) -> None:
    speaking, silent = blocks(check, "Must speak"), blocks(check, "Must stay silent")
    assert speaking
    assert len(silent) >= len(speaking)
    assert all("›" in block for block in speaking)
    assert not any("›" in block for block in silent)


@pytest.mark.parametrize("check", all_checks(), ids=check_names())
def test_each_check_is_explained_and_named_by_its_place(check: Check) -> None:
    assert check.name in check_names()
    at = [check.handbook.find(heading) for heading in HEADINGS]
    assert -1 not in at
    assert at == sorted(at)
