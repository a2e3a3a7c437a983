"""Clean stories of many kinds: nothing in them is an error, and hardly anything to ask about.

Each story under ``stories`` is punctuated and spelt as a careful editor would leave it: British and
American, prose and verse, with and without quotation marks. An error in one is a false alarm.
"""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import pytest

from proofkit.engines.memory import Memory
from proofkit.issue import Tier
from proofkit.pipeline import check_manuscripts
from proofkit.report import RankedIssue, Report
from proofkit.settings import Choices, English

STORIES = sorted((Path(__file__).parent / "stories").glob("*.md"))
AMERICAN = {
    "abuelas-blue-umbrella",
    "but-what-if",
    "pickle-saves-the-parade",
    "zib-comes-to-tea",
}
MOST_QUERIES = 2
AROUND = 40  # characters


@pytest.fixture(scope="module")
def reports() -> Mapping[str, Report]:
    """What is found in every story, by its name; the engines start once."""
    outcomes = check_manuscripts(STORIES, Choices(), memory=Memory(None))
    return {outcome.path.stem: outcome.report for outcome in outcomes if outcome.report}


def shown(report: Report, issue: RankedIssue) -> str:
    """An issue as one line: its check, its words in their context, what it says."""
    page = report.pages[issue.page - 1]
    before = page.text[max(0, issue.start - AROUND) : issue.start]
    after = page.text[issue.end : issue.end + AROUND]
    place = " ".join(f"{before}›{issue.quote}‹{after}".split())
    return f"{issue.check} ({page.label}): {place} | {issue.message} {issue.suggestions}"


def rows(report: Report, tier: Tier) -> list[str]:
    """The issues of one tier, as lines."""
    return [shown(report, issue) for issue in report.issues if issue.tier is tier]


@pytest.mark.engine
@pytest.mark.parametrize("name", [path.stem for path in STORIES])
def test_no_error_in_a_clean_story(name: str, reports: Mapping[str, Report]) -> None:
    report = reports[name]
    assert not report.notices
    assert rows(report, Tier.ERROR) == []
    queries = rows(report, Tier.QUERY)
    assert len(queries) <= MOST_QUERIES, "\n".join(queries)


@pytest.mark.engine
@pytest.mark.parametrize("name", [path.stem for path in STORIES])
def test_the_english_of_each_story(name: str, reports: Mapping[str, Report]) -> None:
    expected = English.AMERICAN if name in AMERICAN else English.BRITISH
    assert reports[name].manuscript.english is expected
