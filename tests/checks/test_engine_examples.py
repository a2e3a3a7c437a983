"""The examples of the checks that need the language model or the grammar engine, with the real ones.

All examples are analysed together, so that each engine starts once.
"""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from proofkit.analysis import Analysis
from proofkit.checks.check import Check, Need
from proofkit.checks.registry import all_checks
from proofkit.engines.analyse import Analyst
from proofkit.engines.memory import Memory
from proofkit.settings import English
from tests.checks.test_examples import assert_as_marked, blocks, cases
from tests.marked import Example, example

TEXT_ONLY = frozenset({Need.TEXT})


@pytest.fixture(scope="module")
def analysed() -> Mapping[str, tuple[Example, Analysis]]:
    """Every example by its text, with what the engines say of it."""
    wanted = dict.fromkeys(
        block
        for check in all_checks()
        if check.needs != TEXT_ONLY
        for section in ("Must speak", "Must stay silent")
        for block in blocks(check, section)
    )
    examples = [example(block) for block in wanted]
    with Analyst(memory=Memory(None)) as analyst:
        analyses = analyst.analyse(
            [(marked.book, English.BRITISH) for marked in examples],
            language_model=True,
            grammar_engine=True,
        )
        assert not analyst.notices
    return dict(zip(wanted, zip(examples, analyses, strict=True), strict=True))


@pytest.mark.engine
@pytest.mark.parametrize(("check", "block"), cases(engines=True))
def test_engine_checks(
    check: Check, block: str, analysed: Mapping[str, tuple[Example, Analysis]]
) -> None:
    marked, analysis = analysed[block]
    assert_as_marked(check, marked, analysis)
