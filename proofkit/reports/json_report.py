"""The report as JSON, for programs. ``report.schema.json`` beside this file documents its shape."""

from __future__ import annotations

import os
from collections.abc import Sequence
from dataclasses import replace

import msgspec

from proofkit.report import Report


def as_json(report: Report) -> bytes:
    """One report as a JSON object, in UTF-8, indented, with a line end."""
    return msgspec.json.format(msgspec.json.encode(_encodable(report)), indent=2) + b"\n"


def as_json_array(reports: Sequence[Report]) -> bytes:
    """Several reports as one JSON array of such objects."""
    encoded = msgspec.json.encode([_encodable(report) for report in reports])
    return msgspec.json.format(encoded, indent=2) + b"\n"


def _encodable(report: Report) -> Report:
    """The same report, its path in characters that UTF-8 has: a file's name may hold bytes that aren't."""
    path = os.fsencode(report.manuscript.path).decode(errors="replace")
    return replace(report, manuscript=replace(report.manuscript, path=path))
