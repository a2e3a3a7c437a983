"""From a place on a page to the language model's word there."""

from __future__ import annotations

from bisect import bisect_left

from proofkit.analysis import PageAnalysis


def token_at(own: PageAnalysis, end: int) -> int | None:
    """The place of the token that ends at character ``end`` of the page, if there is one."""
    at = bisect_left(own.tokens, end, key=lambda token: token.end)
    return at if at < len(own.tokens) and own.tokens[at].end == end else None
