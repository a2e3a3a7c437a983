"""A draft as a value: the text of its pages, what was found in it, how it measured, what checked it.

It is plain data, frozen, made from a report and kept in the book's ledger. Whether two drafts are one
and the same is told by their text, their settings and their checks, never by the file's name or time.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

import msgspec

from proofkit.book import Role, Span
from proofkit.issue import Tier

UNNUMBERED = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class DraftPage:
    """A page of a draft: ``number`` is its 1-based place, ``words`` counts its words of story."""

    number: int
    label: str
    spread: int | None
    role: Role
    words: int
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class DraftIssue:
    """An issue as it was found: ``start`` and ``end`` count characters of the text of its ``page``.

    ``related``    the other places of the same matter
    ``let_stand``  whether the author ruled it right, ``because`` of what, or ""
    """

    key: str
    check: str
    tier: Tier
    page: int
    start: int
    end: int
    quote: str
    message: str
    confidence: float
    related: tuple[Span, ...] = ()
    let_stand: bool = False
    because: str = ""

    @property
    def span(self) -> Span:
        """The characters at fault."""
        return Span(page=self.page, start=self.start, end=self.end)

    @property
    def places(self) -> tuple[Span, ...]:
        """All places of the matter, the first one first."""
        return (self.span, *self.related)


@dataclass(frozen=True, slots=True, kw_only=True)
class SpreadWords:
    """How many words of story a spread has."""

    spread: int
    words: int


@dataclass(frozen=True, slots=True, kw_only=True)
class DraftMeasures:
    """What a draft amounts to.

    ``errors``, ``queries``  those open, without what is let stand
    ``grade``                Flesch-Kincaid grade of the story; None under 100 words
    ``spread_words``         in the book's order; empty where the spreads are unknown
    """

    words: int
    pages: int
    spreads: int
    errors: int
    queries: int
    let_stand: int
    grade: float | None
    spread_words: tuple[SpreadWords, ...] = ()

    @property
    def heaviest(self) -> SpreadWords | None:
        """The spread with the most words, the first of several; None where spreads are unknown."""
        return max(self.spread_words, key=lambda each: each.words, default=None)

    @property
    def per_thousand(self) -> float:
        """Open errors and queries in a thousand words of story; 0 where there are no words."""
        return 1000 * (self.errors + self.queries) / self.words if self.words else 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class DraftRuling:
    """A ruling in force when the draft was checked; what it is about, as in the book's own file."""

    key: str = ""
    check: str = ""
    word: str = ""
    because: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Versions:
    """What checked a draft: proofkit's version, and each engine's by its name."""

    proofkit: str
    engines: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Draft:
    """One draft of a book.

    ``number``      its place in the ledger, from 1; UNNUMBERED until it is recorded
    ``date``        when it was checked, with its time zone
    ``file``        the manuscript's path as the author named it
    ``issues``      in the order of the report, those let stand last
    ``text_digest`` tells its text and its pages from any other
    ``asked_digest`` tells its settings and checks from any other
    ``complete``    whether everything that should be checked was checked
    """

    number: int = UNNUMBERED
    date: datetime
    file: str
    title: str
    pages: tuple[DraftPage, ...]
    issues: tuple[DraftIssue, ...]
    measures: DraftMeasures
    rulings: tuple[DraftRuling, ...] = ()
    versions: Versions
    text_digest: str
    asked_digest: str
    complete: bool = True

    @property
    def digest(self) -> str:
        """The same for two drafts of the same text, checked in the same way."""
        return f"{self.text_digest}-{self.asked_digest}"

    @property
    def open(self) -> tuple[DraftIssue, ...]:
        """The issues that the author does not let stand."""
        return tuple(issue for issue in self.issues if not issue.let_stand)

    @property
    def texts(self) -> tuple[str, ...]:
        """The text of each page, in order."""
        return tuple(page.text for page in self.pages)


def text_digest(pages: Iterable[DraftPage]) -> str:
    """What tells a text and its division into pages from any other, whatever file it comes in."""
    return digest_of(
        [(page.label, page.spread, page.role, page.text.replace("\r\n", "\n")) for page in pages]
    )


def digest_of(matter: object) -> str:
    """What tells a matter of plain values from any other."""
    return hashlib.sha256(msgspec.json.encode(matter, order="sorted")).hexdigest()[:32]
