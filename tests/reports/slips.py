"""A slip in a page, as the reports are given it."""

from __future__ import annotations

from proofkit.issue import Tier
from proofkit.report import RankedIssue


def slip(page: str, quote: str, *suggestions: str, at: int | None = None) -> RankedIssue:
    """An issue about the first ``quote`` of the page's text, or about the one ``at`` a place."""
    start = page.index(quote) if at is None else at
    return RankedIssue(
        rank=1,
        key="k7f2bcd",
        check="spelling/slip",
        tier=Tier.ERROR,
        page=1,
        start=start,
        end=start + len(quote),
        quote=quote,
        message="a slip",
        suggestions=suggestions,
        confidence=0.9,
    )
