"""Every form of the example's report, beside the one that was looked at and kept."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from tests.reports.example_forms import FOLDER, example_report, forms

pytestmark = pytest.mark.engine

NAMES = ("screen.txt", "plain.txt", "sheet.csv", "issues.json", "proof.txt", "comments.txt")


@pytest.fixture(scope="module")
def written() -> Mapping[str, str]:
    return forms(example_report())


@pytest.mark.parametrize("name", NAMES)
def test_the_example_is_shown_as_it_was_kept(name: str, written: Mapping[str, str]) -> None:
    assert written[name] == (FOLDER / name).read_text("utf-8")


def test_every_form_is_kept(written: Mapping[str, str]) -> None:
    assert set(written) == set(NAMES) == {path.name for path in FOLDER.iterdir()}
