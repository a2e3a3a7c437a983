"""How a book becomes its style sheet."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date

from proofkit.book import Page
from proofkit.problem import Notice
from proofkit.stylesheet.english import english_rows
from proofkit.stylesheet.ground import Ground, as_ruled
from proofkit.stylesheet.matters import matter_rows
from proofkit.stylesheet.names import name_sections
from proofkit.stylesheet.questions import question_rows
from proofkit.stylesheet.sheet import Basis, Part, Row, Section, SheetPage, StyleSheet
from proofkit.stylesheet.sounds import invented_rows, sound_rows
from proofkit.stylesheet.typefaces import typefaces
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
    sounds = sound_rows(ground)
    names = name_sections(ground, {row.form for row in sounds})
    yield from names
    matters = matter_rows(ground)
    yield typefaces(ground, matters.get(Part.TYPEFACES, ()))
    named = [row for section in names for row in section.rows]
    invented = invented_rows(ground, [*sounds, *(row for own in matters.values() for row in own)])
    words = word_rows(ground, [*named, *sounds, *invented])
    rows: dict[Part, Sequence[Row]] = {
        Part.ENGLISH: [*english_rows(ground), *matters.get(Part.ENGLISH, ())],
        Part.WORDS: in_alphabet([*words, *matters.get(Part.WORDS, ())]),
        Part.NUMBERS: matters.get(Part.NUMBERS, ()),
        Part.PUNCTUATION: matters.get(Part.PUNCTUATION, ()),
        Part.SOUNDS: sounds,
        Part.INVENTED: invented,
    }
    ruled = {part: [as_ruled(ground, row) for row in own] for part, own in rows.items()}
    undecided = [row for own in ruled.values() for row in own if _is_question(row)]
    for part, own in ruled.items():
        listed = tuple(row for row in own if not _is_question(row))
        if listed:
            yield Section(part=part, rows=listed)
    questions = question_rows(ground, undecided)
    if questions:
        yield Section(part=Part.QUESTIONS, rows=questions)


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
