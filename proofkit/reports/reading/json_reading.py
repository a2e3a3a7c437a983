"""How a book reads as JSON, for programs. ``reading.schema.json`` beside this file documents its shape."""

from __future__ import annotations

import os
from collections.abc import Mapping, Sequence

import msgspec

from proofkit.reading.bands import Place, band_named
from proofkit.reading.measure import Measures
from proofkit.reading.phonics import Decodable
from proofkit.reading_report import ReadingReport, ReadPage, ReadSpread
from proofkit.reports.places import page_name
from proofkit.reports.reading.setting import step_name


def as_json(report: ReadingReport) -> bytes:
    """One report as a JSON object, in UTF-8, indented, with a line end."""
    return _written(_object(report))


def as_json_array(reports: Sequence[ReadingReport]) -> bytes:
    """Several reports as one JSON array of such objects."""
    return _written([_object(report) for report in reports])


def _written(content: object) -> bytes:
    return msgspec.json.format(msgspec.json.encode(content), indent=2) + b"\n"


def _object(report: ReadingReport) -> dict[str, object]:
    band = band_named(report.age_band)
    return {
        "schema_version": report.schema_version,
        # A file's name may hold bytes that are no UTF-8.
        "path": os.fsencode(report.path).decode(errors="replace"),
        "title": report.title,
        "english": report.english,
        "age_band": report.age_band,
        "reading": band.reading,
        "word_list": band.word_list,
        "paginated": report.paginated,
        "words_a_minute": report.words_a_minute,
        "book": _flat(report.book, report.places, report.seconds),
        "spreads": [_spread(report, spread) for spread in report.spreads],
        "pages": [_page(page) for page in report.pages],
        "pace": _pace(report),
        "extents": report.extents,
        "words_beyond": report.words_beyond,
        "phonics": _phonics(report.phonics),
        "rhythm": report.rhythm,
        "verse": report.verse,
        "remarks": report.remarks,
    }


def _flat(measures: Measures, places: Mapping[str, Place], seconds: int) -> dict[str, object]:
    """The measures themselves, without the names of places and runs."""
    names = (field for field in Measures.__dataclass_fields__)
    return {
        **{name: getattr(measures, name) for name in names},
        "seconds": seconds,
        "places": places,
    }


def _spread(report: ReadingReport, spread: ReadSpread) -> dict[str, object]:
    return {
        "spread": spread.spread,
        "name": step_name(report, spread),
        "pages": spread.pages,
        **_flat(spread.measures, spread.places, spread.seconds),
        "run": spread.run,
        "reasons": spread.reasons,
    }


def _page(page: ReadPage) -> dict[str, object]:
    return {
        "page": page.number,
        "name": page_name(page),
        "label": page.label,
        "spread": page.spread,
        "text": page.text,
        **_flat(page.measures, page.places, page.seconds),
        "run": page.measures.run,
    }


def _phonics(phonics: Decodable | None) -> dict[str, object] | None:
    if phonics is None:
        return None
    return {
        "phase": phonics.phase,
        "words": phonics.words,
        "decodable": phonics.decodable,
        "share": phonics.share,
        "share_with_tricky": phonics.share_with_tricky,
        "tricky": phonics.tricky,
        "not_yet": phonics.not_yet,
    }


def _pace(report: ReadingReport) -> dict[str, object]:
    """The rhythm, each spread by its name."""

    def named(places: Sequence[int]) -> list[str]:
        return [step_name(report, report.steps[at]) for at in places]

    pace = report.pace
    return {
        "usual": pace.usual,
        "heaviest": named(pace.heaviest),
        "lightest": named(pace.lightest),
        "empty": named(pace.empty),
        "heavy": named(pace.heavy),
        "in_a_row": [named(ends) for ends in pace.in_a_row],
    }
