"""From places found one by one to a Usage."""

from __future__ import annotations

from collections.abc import Iterable

from proofkit.book import Span
from proofkit.habits.usage import Usage


def usage_of(matter: str, places: Iterable[tuple[str, Span]]) -> Usage:
    """The usage of a matter whose ``places`` come each with its form."""
    found: dict[str, list[Span]] = {}
    for form, span in places:
        found.setdefault(form, []).append(span)
    return Usage(matter=matter, places={form: tuple(sorted(found[form])) for form in found})
