"""Word files as authors make them."""

from __future__ import annotations

import zipfile
from pathlib import Path

import docx
import pytest
from docx.enum.section import WD_SECTION
from docx.enum.text import WD_BREAK
from lxml import etree

from proofkit.book import Book, Role
from proofkit.readers.read import read
from tests.readers.reading import labels, roles, said, texts
from tests.readers.writers import WORD_NAMESPACES, word_paragraph, write_word

BREAK = '<w:p><w:r><w:br w:type="page"/></w:r></w:p>'


def run(text: str) -> str:
    return f'<w:r><w:t xml:space="preserve">{text}</w:t></w:r>'


def paragraph(inner: str) -> str:
    return f"<w:p>{inner}</w:p>"


def word(folder: Path, *body: str, **parts: str) -> Book:
    return read(write_word(folder / "goose.docx", "".join(body), **parts))


def test_a_file_by_python_docx(tmp_path: Path) -> None:
    document = docx.Document()
    document.core_properties.title = "The Goose"
    document.add_heading("The Goose", level=0)
    document.add_paragraph("by Una Vale")
    document.add_heading("Page 2", level=2)
    document.add_paragraph("A goose sat on a clock.")
    bold = document.add_paragraph()
    bold.add_run("Page 3").bold = True
    document.add_paragraph("It ticked.").add_run().add_break(WD_BREAK.PAGE)
    document.save(str(tmp_path / "goose.docx"))
    book = read(tmp_path / "goose.docx")
    assert book.title == "The Goose"
    assert labels(book) == ["", "Page 2", "Page 3"]
    assert [page.role for page in book.pages] == [Role.TITLE, Role.STORY, Role.STORY]
    assert texts(book)[1:] == ["A goose sat on a clock.", "It ticked."]


def test_page_breaks_inside_and_between_paragraphs(tmp_path: Path) -> None:
    book = word(
        tmp_path,
        paragraph(run("Tick.") + '<w:r><w:br w:type="page"/></w:r>' + run("Tock.")),
        BREAK,
        word_paragraph("Bong."),
        BREAK,
        BREAK,
        word_paragraph("Hush.", style="NewPage"),
        BREAK,
    )
    assert texts(book) == ["Tick.", "Tock.", "Bong.", "", "", "Hush."]


@pytest.mark.parametrize(
    ("kind", "pages"),
    [
        (WD_SECTION.NEW_PAGE, ["Tick.", "Tock."]),
        (WD_SECTION.ODD_PAGE, ["Tick.", "Tock."]),
        (WD_SECTION.CONTINUOUS, ["Tick.\n\nTock."]),
    ],
)
def test_section_breaks(tmp_path: Path, kind: WD_SECTION, pages: list[str]) -> None:
    document = docx.Document()
    document.add_paragraph("Tick.")
    document.add_section(kind)
    document.add_paragraph("Tock.")
    document.save(str(tmp_path / "goose.docx"))
    assert texts(read(tmp_path / "goose.docx")) == pages


def test_tracked_changes_are_read_as_accepted(tmp_path: Path) -> None:
    book = word(
        tmp_path,
        paragraph(
            run("The goose ")
            + '<w:del w:author="Una" w:date="1"><w:r><w:delText>sad</w:delText></w:r></w:del>'
            + f'<w:ins w:author="Una" w:date="1">{run("sat")}</w:ins>'
            + run(" down.")
        ),
        paragraph(
            f'<w:moveFrom w:author="Una">{run("Gone.")}</w:moveFrom>'
            f'<w:moveTo w:author="Una">{run("Here.")}</w:moveTo>'
        ),
    )
    assert texts(book) == ["The goose sat down.\n\nHere."]
    assert book.remarks == ("The file has 3 tracked changes; they are read as accepted.",)


def test_a_deleted_paragraph_end_joins_two_paragraphs(tmp_path: Path) -> None:
    deleted = '<w:pPr><w:rPr><w:del w:author="Una"/></w:rPr></w:pPr>'
    book = word(tmp_path, paragraph(deleted + run("The goose ")), paragraph(run("sat down.")))
    assert texts(book) == ["The goose sat down."]
    book = word(tmp_path, paragraph(run("Tick.")), paragraph(deleted + run("Tock.")))
    assert texts(book) == ["Tick.\n\nTock."]


def test_comments_and_hidden_text_are_left_out(tmp_path: Path) -> None:
    book = word(
        tmp_path,
        paragraph(
            '<w:commentRangeStart w:id="0"/>' + run("Tick.") + '<w:commentRangeEnd w:id="0"/>'
            '<w:r><w:commentReference w:id="0"/></w:r>'
            "<w:r><w:rPr><w:vanish/></w:rPr><w:t>secret</w:t></w:r>"
        ),
        comments=f"<w:comments {WORD_NAMESPACES}><w:comment w:id='0'>{word_paragraph('Hm?')}</w:comment></w:comments>",
    )
    assert texts(book) == ["Tick."]
    assert book.remarks == ()


def test_hyphens_spaces_tabs_and_symbols(tmp_path: Path) -> None:
    book = word(
        tmp_path,
        paragraph(
            run("whirr")
            + "<w:r><w:noBreakHyphen/></w:r>"
            + run("tick, good\u00a0luck, gran")
            + "<w:r><w:softHyphen/></w:r>"
            + run("dfa\u00adther")
            + "<w:r><w:tab/></w:r>"
            + run("a")
            + '<w:r><w:sym w:font="Wingdings" w:char="F04A"/></w:r>'
            + '<w:r><w:sym w:font="Times" w:char="00E9"/></w:r>'
        ),
    )
    assert texts(book) == ["whirr-tick, good luck, grandfather a☺é"]


def test_fields_show_their_result(tmp_path: Path) -> None:
    def complex_field(code: str, result: str) -> str:
        return (
            '<w:r><w:fldChar w:fldCharType="begin"/></w:r>'
            f"<w:r><w:instrText>{code}</w:instrText></w:r>"
            '<w:r><w:fldChar w:fldCharType="separate"/></w:r>'
            f'{run(result)}<w:r><w:fldChar w:fldCharType="end"/></w:r>'
        )

    book = word(
        tmp_path,
        paragraph(
            run("See ") + complex_field(' HYPERLINK "http://x.test" ', "the goose") + run(".")
        ),
        paragraph(complex_field(" PAGE ", "7")),
        paragraph(f'<w:fldSimple w:instr=" PAGE ">{run("8")}</w:fldSimple>'),
    )
    assert said(book.pages[0]) == [("story", "See the goose."), ("folio", "7"), ("folio", "8")]


def test_text_boxes_are_read_once_after_their_paragraph(tmp_path: Path) -> None:
    box = f"<w:txbxContent>{word_paragraph('Tock!')}</w:txbxContent>"
    book = word(
        tmp_path,
        paragraph(
            run("Tick.")
            + f"<w:r><mc:AlternateContent><mc:Choice><w:drawing><wps:txbx>{box}</wps:txbx></w:drawing></mc:Choice>"
            + f"<mc:Fallback><w:pict><v:textbox>{box}</v:textbox></w:pict></mc:Fallback></mc:AlternateContent></w:r>"
        ),
        word_paragraph("Bong."),
    )
    assert texts(book) == ["Tick.\n\nTock!\n\nBong."]


def test_content_controls_and_links(tmp_path: Path) -> None:
    book = word(
        tmp_path,
        f"<w:sdt><w:sdtPr><w:text/></w:sdtPr><w:sdtContent>{word_paragraph('Tick.')}</w:sdtContent></w:sdt>",
        paragraph(
            f"<w:hyperlink>{run('Tock.')}</w:hyperlink><w:smartTag>{run(' Bong.')}</w:smartTag>"
        ),
    )
    assert texts(book) == ["Tick.\n\nTock. Bong."]


def test_footnotes_are_back_matter(tmp_path: Path) -> None:
    footnotes = (
        f"<w:footnotes {WORD_NAMESPACES}>"
        f'<w:footnote w:type="separator" w:id="0">{word_paragraph("---")}</w:footnote>'
        f'<w:footnote w:id="2">{word_paragraph("A fob is a chain.")}</w:footnote></w:footnotes>'
    )
    book = word(
        tmp_path,
        paragraph(run("The fob.") + '<w:r><w:footnoteReference w:id="2"/></w:r>'),
        footnotes=footnotes,
    )
    assert said(book.pages[0]) == [("story", "The fob."), ("back matter", "A fob is a chain.")]
    assert book.pages[0].paragraphs[1].locator == "footnote 2"


def table(*rows: tuple[str, ...]) -> str:
    cells = "".join(
        "<w:tr>" + "".join(f"<w:tc>{word_paragraph(cell)}</w:tc>" for cell in row) + "</w:tr>"
        for row in rows
    )
    return f"<w:tbl>{cells}</w:tbl>"


def test_a_table_with_a_row_for_each_spread(tmp_path: Path) -> None:
    book = word(
        tmp_path,
        table(
            ("Spread", "Text", "Illustration notes"),
            ("1", "Goose woke.", "A clock"),
            ("2", "Goose slept.", "A bed"),
        ),
    )
    assert labels(book) == ["Spread 1", "Spread 2"]
    assert said(book.pages[0]) == [("story", "Goose woke."), ("note", "A clock")]
    assert [page.spread for page in book.pages] == [1, 2]


def test_a_table_whose_first_column_holds_marks(tmp_path: Path) -> None:
    book = word(tmp_path, table(("Pages 2-3", "Goose woke."), ("Pages 4-5", "Goose slept.")))
    assert labels(book) == ["Pages 2-3", "Pages 4-5"]
    assert texts(book) == ["Goose woke.", "Goose slept."]


def test_two_cells_are_the_sides_of_the_labelled_spread(tmp_path: Path) -> None:
    book = word(
        tmp_path,
        word_paragraph("Pages 4–5"),
        table(("Tick.", "Tock.")),
        word_paragraph("Pages 6–7"),
        table(("Left", "Right"), ("Bing.", "Bong.")),
    )
    assert labels(book) == [
        "Pages 4–5, left",
        "Pages 4–5, right",
        "Pages 6–7, left",
        "Pages 6–7, right",
    ]
    assert [page.folios for page in book.pages] == [(4,), (5,), (6,), (7,)]
    assert texts(book) == ["Tick.", "Tock.", "Bing.", "Bong."]


def test_rows_are_spreads_where_nothing_else_marks_them(tmp_path: Path) -> None:
    rows = [(f"Goose {n} went left.", f"Goose {n} went right.") for n in range(1, 6)]
    book = word(tmp_path, table(*rows))
    assert len(book.pages) == 10
    assert [page.spread for page in book.pages] == [1, 1, 2, 2, 3, 3, 4, 4, 5, 5]


def test_a_style_for_notes(tmp_path: Path) -> None:
    book = word(
        tmp_path, word_paragraph("A ladder", style="ArtNote"), word_paragraph("Up she went.")
    )
    assert roles(book.pages[0]) == ["note", "story"]
    assert book.pages[0].paragraphs[0].style == "Art note"


def test_line_breaks_are_the_authors(tmp_path: Path) -> None:
    book = word(tmp_path, word_paragraph("tick\ntock"), word_paragraph("Page 2\nBong."))
    assert labels(book) == ["", "Page 2"]
    assert texts(book)[1] == "Bong."
    assert "tick\ntock" in texts(book)[0]


def test_locators_count_paragraphs(tmp_path: Path) -> None:
    path = write_word(
        tmp_path / "goose.docx",
        word_paragraph("") + table(("Tick.", "Tock.")) + word_paragraph("Bong."),
    )
    book = read(path)
    with zipfile.ZipFile(path) as package:
        root = etree.fromstring(package.read("word/document.xml"))
    paragraphs = list(root.iter("{*}p"))
    for page in book.pages:
        for found in page.paragraphs:
            number = int(found.locator.removeprefix("paragraph "))
            text = "".join(paragraphs[number - 1].itertext())
            assert text == page.text[found.start : found.end]
