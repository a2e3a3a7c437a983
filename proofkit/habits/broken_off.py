"""The dash that breaks speech off: which rule, and whether a space stands before it.

It is counted apart from the dash between words: publishers who set a spaced en rule there often set a
closed-up em rule here (New Hart's Rules).
"""

from __future__ import annotations

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.habits._dashes import dashes
from proofkit.habits._places import usage_of
from proofkit.habits.usage import Usage

MATTER = "dash-breaking-off"
FORMS = (
    "em rule",
    "en rule",
    "spaced en rule",
    "spaced em rule",
    "two hyphens",
    "spaced two hyphens",
    "hyphen",
    "spaced hyphen",
)


def usage(book: Book, analysis: Analysis) -> Usage:  # noqa: ARG001 - every matter takes both
    """Every dash with no word after it in its line."""
    return usage_of(MATTER, ((d.form, d.span) for d in dashes(book) if d.breaks_off))
