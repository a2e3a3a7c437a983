"""One matter, and every way in which the book does it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from proofkit.book import Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Usage:
    """Where the book does one matter in which form.

    ``matter``  what it is about, in words: "dash", "serial comma"; or the word itself: "bedtime"
    ``places``  for each form that the book uses, its places in the book's order
    """

    matter: str
    places: Mapping[str, tuple[Span, ...]]

    def count(self, form: str) -> int:
        """How often the book has the form."""
        return len(self.places.get(form, ()))

    @property
    def usual(self) -> str | None:
        """The form that the book has most often; None where it has none, or two as often."""
        ordered = sorted(self.places, key=self.count, reverse=True)
        tied = len(ordered) > 1 and self.count(ordered[0]) == self.count(ordered[1])
        return None if not ordered or tied else ordered[0]

    def against(self, form: str) -> tuple[Span, ...]:
        """Every place that is not in ``form``, in the book's order."""
        return tuple(
            sorted(span for own, spans in self.places.items() if own != form for span in spans)
        )
