"""The measures as a CSV file, for a spreadsheet: a row for each book, spread and page."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Iterator, Mapping

from proofkit.reading.bands import Place
from proofkit.reading.measure import Measures
from proofkit.reading.places import JUDGED
from proofkit.reading_report import ReadingReport
from proofkit.reports.csv_report import harmless
from proofkit.reports.places import page_name
from proofkit.reports.reading.setting import step_name, title

_MEASURES = tuple(Measures.__dataclass_fields__)
COLUMNS = (
    "manuscript",
    "what",
    "name",
    *_MEASURES,
    "seconds",
    "scores of",
    *(f"{name} beside the band" for name in JUDGED),
    "why to work on it",
)
_Cell = str | int | float | None


def as_csv(reports: Iterable[ReadingReport]) -> str:
    """The rows of all reports under one line of headings, lines ended as RFC 4180 has it."""
    text = io.StringIO(newline="")
    writer = csv.writer(text)
    writer.writerow(COLUMNS)
    for report in reports:
        writer.writerows([harmless(report.path), *cells] for cells in _rows(report))
    return text.getvalue()


def _rows(report: ReadingReport) -> Iterator[list[_Cell]]:
    yield [
        "book",
        harmless(title(report)),
        *_cells(report.book, report.seconds, None, report.places),
        "",
    ]
    for spread in report.spreads:
        yield [
            "spread",
            harmless(step_name(report, spread)),
            *_cells(spread.measures, spread.seconds, spread.run, spread.places),
            harmless("; ".join(spread.reasons)),
        ]
    reasons = {step.pages[0]: step.reasons for step in report.steps if step.spread is None}
    for page in report.pages:
        yield [
            "page",
            harmless(page_name(page)),
            *_cells(page.measures, page.seconds, page.measures.run, page.places),
            harmless("; ".join(reasons.get(page.number, ()))),
        ]


def _cells(
    measures: Measures, seconds: int, run: tuple[int, int] | None, places: Mapping[str, Place]
) -> list[_Cell]:
    return [
        *(getattr(measures, name) for name in _MEASURES),
        seconds,
        f"{run[0]}–{run[1]}" if run else "",
        *(str(places.get(name, "")) for name in JUDGED),
    ]
