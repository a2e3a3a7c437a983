"""The example's report in every form, as text that a person can read.

    python -m tests.reports.example_forms

writes them anew into ``tests/reports/example``. Look at what changed before you keep it.
"""

from __future__ import annotations

import io
import json
import re
import tempfile
from collections.abc import Mapping
from datetime import UTC, datetime
from html import unescape
from pathlib import Path

from examples.make_examples import HERE, NAME
from proofkit.cli.screen import sheet
from proofkit.engines.memory import Memory
from proofkit.pipeline import check_manuscripts
from proofkit.readers.word_comments import comments_in
from proofkit.report import Report
from proofkit.reports.csv_report import as_csv
from proofkit.reports.json_report import as_json
from proofkit.reports.plain import as_plain
from proofkit.reports.proof.proof import as_proof
from proofkit.reports.terminal.show import show
from proofkit.reports.word_copy.copy import as_word_copy
from proofkit.settings import Choices

FOLDER = Path(__file__).parent / "example"
MANUSCRIPT = HERE / f"{NAME}.docx"
MADE = datetime(2026, 1, 1, tzinfo=UTC)


def example_report() -> Report:
    """The report of the example's first draft, with the real engines."""
    (outcome,) = check_manuscripts([MANUSCRIPT], Choices(), memory=Memory(None))
    if outcome.report is None:
        raise ValueError(outcome.problem)
    return outcome.report


def forms(report: Report) -> Mapping[str, str]:
    """Every form of the report by the name of its file; where the manuscript lies is left out."""
    written = {
        "screen.txt": _screen(report),
        "plain.txt": as_plain(report),
        "sheet.csv": as_csv([report]).replace("\r\n", "\n"),
        "issues.json": json.dumps(
            json.loads(as_json(report))["issues"], indent=1, ensure_ascii=False
        ),
        "proof.txt": _words_of(as_proof(report)),
        "comments.txt": _comments(report),
    }
    return {name: text.replace(str(MANUSCRIPT), MANUSCRIPT.name) for name, text in written.items()}


def _screen(report: Report) -> str:
    text = io.StringIO()
    show(report, sheet(text, 100), limit=0)
    return text.getvalue()


def _words_of(page: str) -> str:
    """The words of a page for the browser, a line to each of its blocks."""
    body = re.sub(r"(?s)<(style|script)\b.*?</\1>", "", page)
    lines = re.sub(r"<(?:p|li|tr|h\d|section|dt|dd|div)\b[^>]*>", "\n", body)
    text = unescape(re.sub(r"<[^>]*>", " ", lines))
    return "\n".join(filter(None, (" ".join(line.split()) for line in text.split("\n")))) + "\n"


def _comments(report: Report) -> str:
    with tempfile.TemporaryDirectory() as folder:
        copy = Path(folder) / "copy.docx"
        copy.write_bytes(as_word_copy(report, MANUSCRIPT, MADE))
        return "".join(f"›{each.words}‹ {each.text}\n" for each in comments_in(copy))


if __name__ == "__main__":
    FOLDER.mkdir(exist_ok=True)
    for name, text in forms(example_report()).items():
        (FOLDER / name).write_text(text, encoding="utf-8")
