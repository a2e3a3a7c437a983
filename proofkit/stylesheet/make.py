"""How a book becomes its style sheet."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import date

from proofkit.book import Page
from proofkit.problem import Notice
from proofkit.stylesheet.english import english_rows
from proofkit.stylesheet.ground import Ground, as_ruled
from proofkit.stylesheet.matters import matter_rows
from proofkit.stylesheet.names import name_rows
from proofkit.stylesheet.questions import question_rows
from proofkit.stylesheet.sheet import Basis, Part, Row, Section, SheetPage, StyleSheet
from proofkit.stylesheet.sounds import invented_rows, sound_rows
from proofkit.stylesheet.typefaces import remark_on_italics, typeface_rows
from proofkit.stylesheet.words import in_alphabet, word_rows


def style_sheet_of(ground: Ground, *, made: date, notices: Sequence[Notice] = ()) -> StyleSheet:
    """The style sheet of a book, as it stands on the day ``made``."""
    book = ground.book
    sections = {section.part: section for section in _sections(ground)}
    return StyleSheet(
        path=book.path,
        title=ground.settings.title or book.title,
        made=made,
        english=ground.analysis.english,
        paginated=book.paginated,
        pages=tuple(_page(page) for page in book.pages),
        sections=tuple(sections[part] for part in Part if part in sections),
        notices=tuple(notices),
    )


def _sections(ground: Ground) -> Iterator[Section]:
    """Every part that has something to say; what is open stands under the questions alone."""
    rows = {
        part: tuple(as_ruled(ground, row) for row in own) for part, own in _rows(ground).items()
    }
    undecided = [row for own in rows.values() for row in own if _is_question(row)]
    settled = {
        part: tuple(row for row in own if not _is_question(row)) for part, own in rows.items()
    }
    settled[Part.QUESTIONS] = question_rows(ground, undecided)
    remarks = {Part.TYPEFACES: remark_on_italics(settled[Part.TYPEFACES])}
    for part, own in settled.items():
        if own or part in remarks:
            yield Section(part=part, rows=own, remark=remarks.get(part, ""))


def _rows(ground: Ground) -> Mapping[Part, Sequence[Row]]:
    matters, sounds = matter_rows(ground), sound_rows(ground)
    names = name_rows(ground, {row.form for row in sounds})
    invented = invented_rows(ground, [*sounds, *matters[Part.WORDS]])
    named = [row for own in names.values() for row in own]
    words = word_rows(ground, [*named, *sounds, *invented])
    return {
        **names,
        Part.ENGLISH: [*english_rows(ground), *matters[Part.ENGLISH]],
        Part.WORDS: in_alphabet([*words, *matters[Part.WORDS]]),
        Part.NUMBERS: matters[Part.NUMBERS],
        Part.PUNCTUATION: matters[Part.PUNCTUATION],
        Part.TYPEFACES: [*matters[Part.TYPEFACES], *typeface_rows(ground)],
        Part.SOUNDS: sounds,
        Part.INVENTED: invented,
    }


def _is_question(row: Row) -> bool:
    """Whether there is no form to go by."""
    return row.basis is Basis.OPEN and not row.form


def _page(page: Page) -> SheetPage:
    return SheetPage(
        number=page.number,
        label=page.label,
        spread=page.spread,
        role=page.role,
        paragraphs=tuple(paragraph.start for paragraph in page.paragraphs),
    )
