"""The example book, end to end with the real engines: every planted slip, and nothing in the clean copy."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import pytest

from examples.make_examples import FORMATS, HERE, NAME, Slip, lines, slips
from proofkit.engines.memory import Memory
from proofkit.issue import Tier
from proofkit.pipeline import Outcome, check_manuscripts
from proofkit.report import RankedIssue, Report
from proofkit.settings import Choices

pytestmark = pytest.mark.engine

DRAFTS = {suffix: HERE / f"{NAME}{suffix}" for suffix in FORMATS}
CLEAN = {suffix: HERE / "clean" / f"{NAME}{suffix}" for suffix in FORMATS}
ALL = [*DRAFTS.values(), *CLEAN.values()]


@pytest.fixture(scope="module")
def reports() -> Mapping[Path, Report]:
    """Every example file's report, from one run."""
    before = {path: (path.read_bytes(), path.stat().st_mtime_ns) for path in ALL}
    outcomes = list(check_manuscripts(ALL, Choices(), memory=Memory(None)))
    assert {path: (path.read_bytes(), path.stat().st_mtime_ns) for path in ALL} == before
    return {outcome.path: _whole(outcome) for outcome in outcomes}


def _whole(outcome: Outcome) -> Report:
    assert outcome.report is not None, outcome.problem
    assert outcome.report.complete
    return outcome.report


def _finds(slip: Slip, issue: RankedIssue) -> bool:
    """Whether the issue is the slip's, and its first reading mends it.

    A label is not in the text: its row stands at the page, and no reading can be given.
    """
    if not issue.check.startswith(f"{slip.family}/"):
        return False
    if slip.family == "pages":
        return slip.wrong in issue.message
    if slip.wrong in issue.quote:
        return issue.quote.replace(slip.wrong, slip.right) in issue.suggestions[:1]
    return slip.right in [slip.wrong.replace(issue.quote, s) for s in issue.suggestions[:1]]


@pytest.mark.parametrize("slip", slips(), ids=lambda slip: slip.wrong)
def test_every_planted_slip_is_among_the_first_rows(
    reports: Mapping[Path, Report], slip: Slip
) -> None:
    first_rows = reports[DRAFTS[".docx"]].issues[: len(slips()) + 5]
    assert any(_finds(slip, issue) for issue in first_rows)


def test_the_clean_copy_has_no_error_and_at_most_two_queries(
    reports: Mapping[Path, Report],
) -> None:
    report = reports[CLEAN[".docx"]]
    assert [(i.quote, i.check) for i in report.issues if i.tier is Tier.ERROR] == []
    assert len(report.issues) <= 2, [(i.quote, i.check) for i in report.issues]


@pytest.mark.parametrize("files", [DRAFTS, CLEAN], ids=["draft", "clean"])
def test_all_five_formats_say_the_same(
    reports: Mapping[Path, Report], files: Mapping[str, Path]
) -> None:
    said = {suffix: reports[path].issues for suffix, path in files.items()}
    assert {suffix: issues == said[".docx"] for suffix, issues in said.items()} == dict.fromkeys(
        FORMATS, True
    )


@pytest.mark.parametrize(("folder", "version"), [(HERE, "wrong"), (HERE / "clean", "right")])
@pytest.mark.parametrize("suffix", FORMATS)
def test_the_files_are_made_from_the_source(folder: Path, version: str, suffix: str) -> None:
    assert (folder / f"{NAME}{suffix}").read_bytes() == FORMATS[suffix](lines(version))
