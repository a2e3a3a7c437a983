"""The style sheet set out as tables of words: what every form of it shows, however it looks."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import PurePath

from proofkit.reports.fault import one_line
from proofkit.reports.phrases import counted
from proofkit.reports.stylesheet.where import first_on, last_on
from proofkit.settings import English
from proofkit.stylesheet.sheet import Basis, Other, Part, Row, Section, StyleSheet

HEADINGS = {
    Part.ENGLISH: "English and dictionary",
    Part.CHARACTERS: "Characters",
    Part.PLACES: "Places",
    Part.THINGS: "Other names",
    Part.WORDS: "Words, A to Z",
    Part.NUMBERS: "Numbers, dates and times",
    Part.PUNCTUATION: "Punctuation",
    Part.TYPEFACES: "Typefaces",
    Part.SOUNDS: "Sounds",
    Part.INVENTED: "Invented words, and words of the speakers’ own",
    Part.QUESTIONS: "Open questions",
}
LEGEND = (
    "“Decided” is what the author settled. “Always” and “mostly” are what the manuscript does so far, "
    "with how often: they can still be changed. “Open” is for the author to decide."
)

# Forms that proofkit.toml names by a word that would clash with "always" beside it.
_FORMS = {("serial comma", "always"): "put in", ("serial comma", "never"): "left out"}
_NAMES = (Part.CHARACTERS, Part.PLACES, Part.THINGS)
_MATTERS = (Part.ENGLISH, Part.NUMBERS, Part.PUNCTUATION, Part.TYPEFACES)
_ENGLISH = {English.BRITISH: "British English", English.AMERICAN: "American English"}
_MONTHS = (
    "January February March April May June July August September October November December".split()
)


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetTable:
    """One section as it is shown; each row has a cell for each of ``heads``."""

    heading: str
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    remark: str


def title(sheet: StyleSheet) -> str:
    """The book's title, or its file's name where the manuscript gives none."""
    return one_line(sheet.title) or PurePath(sheet.path).stem


def about(sheet: StyleSheet) -> str:
    """Which English, which file, which day."""
    file = one_line(PurePath(sheet.path).name)
    return f"style sheet, {_ENGLISH[sheet.english]}, from {file} on {day(sheet)}"


def day(sheet: StyleSheet) -> str:
    """The day on which the sheet was made: 25 November 2026."""
    return f"{sheet.made.day} {_MONTHS[sheet.made.month - 1]} {sheet.made.year}"


def tables(sheet: StyleSheet) -> tuple[SheetTable, ...]:
    """Every section of the sheet, set out."""
    return tuple(_table(sheet, section) for section in sheet.sections)


def _table(sheet: StyleSheet, section: Section) -> SheetTable:
    return SheetTable(
        heading=HEADINGS[section.part],
        heads=_heads(section.part),
        rows=tuple(tuple(map(one_line, _cells(sheet, section.part, row))) for row in section.rows),
        remark=section.remark,
    )


def _heads(part: Part) -> tuple[str, ...]:
    if part in _NAMES:
        return ("name", "how", "first on", "last on", "notes")
    if part is Part.TYPEFACES:
        return ("matter", "form or words", "how", "first on", "notes")
    if part in _MATTERS:
        return ("matter", "form", "how", "first on", "notes")
    if part is Part.QUESTIONS:
        return ("to decide", "in the manuscript")
    return ("word", "how", "first on", "notes")


def _cells(sheet: StyleSheet, part: Part, row: Row) -> tuple[str, ...]:
    if part is Part.QUESTIONS:
        return (row.term, "; ".join(filter(None, (_found(sheet, row), row.note))))
    form = _said(row, row.form)
    subject = (row.term, form) if part in _MATTERS else (form,)
    first = first_on(sheet, row.places)
    seen = (first, last_on(sheet, row.places)) if part in _NAMES else (first,)
    return (*subject, how(row), *seen, _notes(sheet, row))


def how(row: Row) -> str:
    """Where the form comes from, with how often the book has it: "mostly (4 of 5)"."""
    own = len(row.places)
    total = own + sum(len(other.places) for other in row.others)
    if row.basis is Basis.OPEN or not own:
        return row.basis.value
    if row.basis is Basis.MOSTLY:
        return f"mostly ({own} of {total})"
    if row.basis is Basis.DECIDED and total > own:
        return f"decided ({own} of {total})"
    if row.basis is Basis.ALWAYS and own == 1:
        return "seen once"
    return f"{row.basis.value} ({own})"


def _notes(sheet: StyleSheet, row: Row) -> str:
    beside = "; ".join(f"also {_with_places(sheet, row, other)}" for other in row.others)
    return "; ".join(filter(None, (row.note, beside)))


def _found(sheet: StyleSheet, row: Row) -> str:
    return ", ".join(_with_places(sheet, row, other) for other in row.others)


def _said(row: Row, form: str) -> str:
    return _FORMS.get((row.term, form), form)


def _with_places(sheet: StyleSheet, row: Row, other: Other) -> str:
    """A form, how often and where: "bed-time (spread 8)", "Mum (4 times, first on spread 1)"."""
    first, form = first_on(sheet, other.places), _said(row, other.form)
    if len(other.places) < 2:
        return f"{form} ({first})" if first else form
    preposition = "in" if first.startswith("paragraph") else "on"
    return f"{form} ({counted(len(other.places), 'time')}, first {preposition} {first})"
