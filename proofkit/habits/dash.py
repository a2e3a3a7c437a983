"""The dash between words: which rule, and whether it has spaces.

New Hart's Rules: British publishers set a spaced en rule, Oxford and American ones a closed-up em rule.
Two hyphens or a spaced hyphen are a typewriter's way of writing either.
"""

from __future__ import annotations

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.habits._dashes import dashes
from proofkit.habits._places import usage_of
from proofkit.habits.usage import Usage

MATTER = "dash"
FORMS = (
    "spaced en rule",
    "em rule",
    "spaced em rule",
    "en rule",
    "spaced hyphen",
    "two hyphens",
    "spaced two hyphens",
)


def usage(book: Book, analysis: Analysis) -> Usage:  # noqa: ARG001 - every matter takes both
    """Every dash that has words on both sides."""
    return usage_of(MATTER, ((d.form, d.span) for d in dashes(book) if not d.breaks_off))
