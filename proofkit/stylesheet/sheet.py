"""What a style sheet is: rows under headings, each with its form, where it comes from, and where it stands.

It is plain data, frozen, and msgspec turns it into JSON as it stands;
``reports/stylesheet/stylesheet.schema.json`` documents that shape.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from proofkit.book import Role, Span
from proofkit.problem import Notice
from proofkit.settings import English


class Part(StrEnum):
    """The parts of a style sheet, in the order in which the trade sets them out."""

    ENGLISH = "english"
    CHARACTERS = "characters"
    PLACES = "places"
    THINGS = "things"
    WORDS = "words"
    NUMBERS = "numbers"
    PUNCTUATION = "punctuation"
    TYPEFACES = "typefaces"
    SOUNDS = "sounds"
    INVENTED = "invented"
    QUESTIONS = "questions"


class Basis(StrEnum):
    """Why a row says what it says."""

    DECIDED = "decided"  # the author wrote it down
    ALWAYS = "always"  # the book has no other form
    MOSTLY = "mostly"  # the book has another form too, less often
    OPEN = "open"  # nobody decided, and the book can't be asked


@dataclass(frozen=True, slots=True, kw_only=True)
class Other:
    """A form that the book has beside the one that counts: how often, and its places."""

    form: str
    places: tuple[Span, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One line: something that could be contradicted later.

    ``term``    what it is about: "dash"; for a name or a word, the word itself
    ``form``    as it is to stand: "spaced en rule"; for a name or a word, equal to ``term``;
                "" for an open question
    ``places``  where the book has it so, in the book's order; none where it can't be said
    ``others``  the book's other forms of it, the most used first
    ``note``    what else a proofreader should know; a short phrase, or ""
    """

    term: str
    form: str
    basis: Basis
    places: tuple[Span, ...] = ()
    others: tuple[Other, ...] = ()
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """The rows of one part of the sheet; ``remark`` is a sentence for the whole part, or ""."""

    part: Part
    rows: tuple[Row, ...]
    remark: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetPage:
    """A page that places count from; ``paragraphs`` are where its paragraphs begin."""

    number: int
    label: str
    spread: int | None
    role: Role
    paragraphs: tuple[int, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class StyleSheet:
    """The style sheet of one manuscript, as it stands on one day.

    ``title`` is as the manuscript gives it, or ""; ``sections`` has no part twice and none empty.
    """

    schema_version: int = 1
    path: str
    title: str
    made: date
    english: English
    paginated: bool
    pages: tuple[SheetPage, ...]
    sections: tuple[Section, ...]
    notices: tuple[Notice, ...] = ()

    def section(self, part: Part) -> Section | None:
        """The section of a part, or None where the sheet has nothing to say of it."""
        return next((section for section in self.sections if section.part is part), None)
