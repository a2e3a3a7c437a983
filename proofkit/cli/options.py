"""The values that options of the command line can have."""

from __future__ import annotations

from enum import StrEnum


class Format(StrEnum):
    """How a report is written."""

    TABLE = "table"
    JSON = "json"
    CSV = "csv"
    HTML = "html"
    WORD = "word"

    @property
    def ending(self) -> str:
        """How the file of such a report ends; a table's can't be taken for a manuscript's."""
        own = {
            Format.TABLE: ".report.txt",
            Format.HTML: ".proof.html",
            Format.WORD: " - proof queries.docx",
        }
        return own.get(self, f".{self}")

    @property
    def what(self) -> str:
        """What the author knows it as."""
        return {Format.HTML: "marked proof", Format.WORD: "Word copy"}.get(self, "report")


class EnglishAsked(StrEnum):
    """Which English is asked for."""

    AUTO = "auto"
    BRITISH = "british"
    AMERICAN = "american"
