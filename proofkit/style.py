"""What the author decided about the book's style; it comes before what the book mostly does.

A decision names a *matter* ("dash") and the *form* it takes ("spaced en rule"). Which matters there
are, and which forms, is said by ``proofkit/habits``: one file a matter. Names and words are decided by
writing them as they are to stand.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True, kw_only=True)
class Style:
    """The decisions kept in ``proofkit.toml``.

    ``forms``  for each matter decided, the form it takes: {"dash": "spaced en rule"}
    ``names``  people, places and things with a name, as they are to stand
    ``words``  words, as they are to stand: with their hyphens, capitals and accents
    """

    forms: Mapping[str, str] = field(default_factory=dict)
    names: tuple[str, ...] = ()
    words: tuple[str, ...] = ()

    def form(self, matter: str) -> str | None:
        """The form decided for a matter, or None where the book's own habit counts."""
        return self.forms.get(matter)
