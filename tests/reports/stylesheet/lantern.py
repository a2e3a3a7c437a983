"""A style sheet made by hand: what its forms are tried on."""

from __future__ import annotations

from datetime import date

from proofkit.book import Role, Span
from proofkit.problem import Notice
from proofkit.settings import English
from proofkit.stylesheet.sheet import Basis, Other, Part, Row, Section, SheetPage, StyleSheet

PAGES = tuple(
    SheetPage(
        number=number,
        label="" if number == 1 else f"Spread {number - 1}",
        spread=None if number == 1 else number - 1,
        role=Role.TITLE if number == 1 else Role.STORY,
        paragraphs=(0, 40, 80),
    )
    for number in range(1, 9)
)


def at(*pages: int) -> tuple[Span, ...]:
    return tuple(Span(page=page, start=45, end=50) for page in pages)


def other(form: str, *pages: int) -> Other:
    return Other(form=form, places=at(*pages))


def word(
    form: str, basis: Basis, *pages: int, others: tuple[Other, ...] = (), note: str = ""
) -> Row:
    return Row(term=form, form=form, basis=basis, places=at(*pages), others=others, note=note)


def matter(
    term: str, form: str, basis: Basis, *pages: int, others: tuple[Other, ...] = (), note: str = ""
) -> Row:
    return Row(term=term, form=form, basis=basis, places=at(*pages), others=others, note=note)


SECTIONS = (
    Section(
        part=Part.CHARACTERS,
        rows=(
            word("Ada Pell", Basis.DECIDED, 2, 3, 8, note="she"),
            word("Mr Wick", Basis.MOSTLY, 3, 4, 5, others=(other("Mister Wick", 6),)),
        ),
    ),
    Section(part=Part.WORDS, rows=(word("lamp-lighter", Basis.ALWAYS, 4),)),
    Section(
        part=Part.PUNCTUATION,
        rows=(
            matter("dash", "spaced en rule", Basis.DECIDED),
            matter(
                "speech", "double marks", Basis.MOSTLY, 2, 3, others=(other("single marks", 5, 6),)
            ),
        ),
    ),
    Section(part=Part.TYPEFACES, rows=(), remark="No typeface can be seen in a text file."),
    Section(
        part=Part.QUESTIONS,
        rows=(
            Row(
                term="a_b | *c*",
                form="",
                basis=Basis.OPEN,
                others=(other("night light", 5), other("night-light", 7)),
                note="as a noun",
            ),
        ),
    ),
)


def lantern(
    *,
    sections: tuple[Section, ...] = SECTIONS,
    notices: tuple[Notice, ...] = (),
    paginated: bool = True,
    path: str = "lantern.docx",
    title: str = "The Last Lantern",
) -> StyleSheet:
    return StyleSheet(
        path=path,
        title=title,
        made=date(2026, 11, 25),
        english=English.BRITISH,
        paginated=paginated,
        pages=PAGES,
        sections=sections,
        notices=notices,
    )
