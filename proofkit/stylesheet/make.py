"""How a book becomes its style sheet."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date

from proofkit.book import Page
from proofkit.problem import Notice
from proofkit.stylesheet.english import english_rows
from proofkit.stylesheet.ground import Ground
from proofkit.stylesheet.matters import matter_rows
from proofkit.stylesheet.names import name_sections
from proofkit.stylesheet.questions import question_rows
from proofkit.stylesheet.sheet import Basis, Part, Row, Section, SheetPage, StyleSheet
from proofkit.stylesheet.sounds import invented_rows, sound_rows, typefaces
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
    names = name_sections(ground)
    yield from names
    rows = {part: list(own) for part, own in matter_rows(ground).items()}
    rows[Part.ENGLISH] = [*english_rows(ground), *rows.get(Part.ENGLISH, ())]
    rows[Part.SOUNDS] = list(sound_rows(ground))
    rows[Part.INVENTED] = list(invented_rows(ground, [row for own in rows.values() for row in own]))
    named = [row for section in names for row in section.rows]
    elsewhere = (*named, *rows[Part.SOUNDS], *rows[Part.INVENTED])
    rows[Part.WORDS] = in_alphabet((*word_rows(ground, elsewhere), *rows.get(Part.WORDS, ())))
    yield typefaces(ground, rows.pop(Part.TYPEFACES, ()))
    undecided = [row for own in rows.values() for row in own if _is_question(row)]
    rows[Part.QUESTIONS] = list(question_rows(ground, undecided))
    for part, own in rows.items():
        listed = [row for row in own if part is Part.QUESTIONS or not _is_question(row)]
        if listed:
            yield Section(part=part, rows=tuple(listed))


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
