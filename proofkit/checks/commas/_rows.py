"""One row for each missing comma, and one for a refrain."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from proofkit.book import Book, Span
from proofkit.issue import Issue, Tier, issue_at

_REFRAIN = 5


@dataclass(frozen=True, slots=True, kw_only=True)
class Missing:
    """A place, how it should read, how sure that is, and why."""

    span: Span
    reading: str
    message: str
    tier: Tier
    confidence: float


def rows(book: Book, check: str, places: Iterable[Missing]) -> Iterator[Issue]:
    """An issue for each place; the same words five times or more are one."""
    alike: dict[str, list[Missing]] = defaultdict(list)
    for place in places:
        alike[book.quote(place.span)].append(place)
    for group in alike.values():
        for first, *others in [group] if len(group) >= _REFRAIN else [[place] for place in group]:
            yield issue_at(
                book,
                first.span,
                check=check,
                tier=first.tier,
                message=first.message,
                confidence=first.confidence,
                suggestions=[first.reading],
                related=[other.span for other in others],
            )
