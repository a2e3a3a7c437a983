"""What the author chose for a run: the English, the age band, where the grammar engine is."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class English(StrEnum):
    """Which English the book is written in."""

    BRITISH = "british"
    AMERICAN = "american"

    @property
    def code(self) -> str:
        """The language tag that the engines know it by."""
        return "en-GB" if self is English.BRITISH else "en-US"


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """One run's settings. ``english`` None means: find out from the book.

    ``grammar_server`` is the address of a grammar engine that already runs, or None for our own.
    """

    english: English | None = None
    age_band: str = "picture"
    grammar_server: str | None = None
