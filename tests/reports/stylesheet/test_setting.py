from __future__ import annotations

import pytest

from proofkit.reports.stylesheet.setting import HEADINGS, about, how, tables, title
from proofkit.stylesheet.sheet import Basis, Part, Row, Section
from tests.reports.stylesheet.lantern import SECTIONS, lantern, other, word


@pytest.mark.parametrize(
    ("row", "said"),
    [
        (word("lamp", Basis.ALWAYS, 2), "seen once"),
        (word("lamp", Basis.ALWAYS, 2, 3, 3), "always (3)"),
        (word("lamp", Basis.MOSTLY, 2, 3, others=(other("Lamp", 4),)), "mostly (2 of 3)"),
        (word("lamp", Basis.DECIDED), "decided"),
        (word("lamp", Basis.DECIDED, 2), "decided (1)"),
        (word("lamp", Basis.DECIDED, 2, others=(other("Lamp", 4, 5),)), "decided (1 of 3)"),
        (Row(term="English", form="British", basis=Basis.MOSTLY), "mostly"),
        (Row(term="lamp or Lamp", form="", basis=Basis.OPEN, others=(other("lamp", 2),)), "open"),
    ],
)
def test_a_row_says_whether_it_was_decided_and_how_often_the_book_has_it(
    row: Row, said: str
) -> None:
    assert how(row) == said


def test_every_part_has_its_heading_and_every_row_a_cell_for_each_head() -> None:
    shown = tables(lantern())
    assert [table.heading for table in shown] == [HEADINGS[section.part] for section in SECTIONS]
    assert set(HEADINGS) == set(Part)
    for table in shown:
        assert {len(row) for row in table.rows} <= {len(table.heads)}


def test_a_name_has_its_first_and_its_last_place_and_what_is_beside_it() -> None:
    characters = tables(lantern())[0]
    assert characters.rows == (
        ("Ada Pell", "decided (3)", "spread 1", "spread 7", "she"),
        ("Mr Wick", "mostly (3 of 4)", "spread 2", "spread 4", "also Mister Wick (spread 5)"),
    )


def test_a_form_seen_more_than_once_is_counted() -> None:
    punctuation = tables(lantern())[2]
    assert punctuation.rows[1][-1] == "also single marks (2 times, first on spread 4)"


def test_an_open_question_shows_every_form_with_its_place() -> None:
    assert tables(lantern())[-1].rows == (
        ("a_b | *c*", "night light (spread 4), night-light (spread 6); as a noun"),
    )


def test_without_pages_places_are_paragraphs() -> None:
    words = tables(lantern(paginated=False))[1]
    assert words.rows[0][2] == "paragraph 2"
    punctuation = tables(lantern(paginated=False))[2]
    assert "first in paragraph 2" in punctuation.rows[1][-1]


def test_the_sheet_is_headed_by_the_books_title_or_else_its_files_name() -> None:
    assert title(lantern()) == "The Last Lantern"
    assert title(lantern(title="")) == "lantern"
    assert about(lantern()) == "style sheet, British English, from lantern.docx on 25 November 2026"


def test_a_row_keeps_to_one_line() -> None:
    torn = word("two\nlines\x1b[31m", Basis.ALWAYS, 2)
    section = Section(part=Part.WORDS, rows=(torn,))
    cell = tables(lantern(sections=(section,)))[0].rows[0][0]
    assert "\n" not in cell
    assert "\x1b" not in cell
