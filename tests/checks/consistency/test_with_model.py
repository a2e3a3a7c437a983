"""The examples of the consistency checks that read the language model's analysis."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from proofkit.analysis import Analysis
from proofkit.checks.check import Check, Need
from proofkit.checks.registry import all_checks
from proofkit.engines.language_model import LanguageModel
from proofkit.settings import English
from proofkit.words.vocabulary import vocabulary_of
from tests.checks.test_examples import assert_as_marked, blocks
from tests.marked import example

pytestmark = pytest.mark.engine

CASES = [
    pytest.param(check, block, id=f"{check.name}-{section.split()[1]}-{number}")
    for check in all_checks()
    if check.family == "consistency" and check.needs == frozenset({Need.LANGUAGE_MODEL})
    for section in ("Must speak", "Must stay silent")
    for number, block in enumerate(blocks(check, section), 1)
]


@pytest.fixture(scope="module")
def model() -> Iterator[LanguageModel]:
    model = LanguageModel()
    yield model
    model.close()


@pytest.mark.parametrize(("check", "block"), CASES)
def test_examples(model: LanguageModel, check: Check, block: str) -> None:
    marked = example(block)
    pages = tuple(model.analyse([page.prose for page in marked.book.pages]))
    analysis = Analysis(english=English.BRITISH, vocabulary=vocabulary_of(marked.book), pages=pages)
    assert_as_marked(check, marked, analysis)
