"""The values that options of the command line can have."""

from __future__ import annotations

from enum import StrEnum


class Format(StrEnum):
    """How a report is written."""

    TABLE = "table"
    JSON = "json"
    CSV = "csv"

    @property
    def ending(self) -> str:
        """How the file of such a report ends; a table's can't be taken for a manuscript's."""
        return ".report.txt" if self is Format.TABLE else f".{self}"


class EnglishAsked(StrEnum):
    """Which English is asked for."""

    AUTO = "auto"
    BRITISH = "british"
    AMERICAN = "american"
