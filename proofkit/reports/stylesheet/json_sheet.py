"""The style sheet as JSON, for programs. ``stylesheet.schema.json`` beside this file documents its shape."""

from __future__ import annotations

import os
from dataclasses import replace

import msgspec

from proofkit.stylesheet.sheet import StyleSheet


def as_json(sheet: StyleSheet) -> bytes:
    """A JSON object in UTF-8, indented, with a line end."""
    # A file's name may hold bytes that are no UTF-8.
    path = os.fsencode(sheet.path).decode(errors="replace")
    return msgspec.json.format(msgspec.json.encode(replace(sheet, path=path)), indent=2) + b"\n"
