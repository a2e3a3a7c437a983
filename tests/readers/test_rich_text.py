"""Rich Text files, with what converters lose."""

from __future__ import annotations

from pathlib import Path

from proofkit.book import Book
from proofkit.readers.read import read
from tests.readers.reading import labels, said, texts
from tests.readers.writers import write_rtf


def rtf(folder: Path, body: str) -> Book:
    return read(write_rtf(folder / "goose.rtf", body))


def test_page_and_section_breaks(tmp_path: Path) -> None:
    book = rtf(
        tmp_path,
        r"Tick.\par\page Tock.\par\sect\sectd Bong.\par\sect\sectd\sbknone Hush.\par\pard\pagebb Shh.\par",
    )
    assert texts(book) == ["Tick.", "Tock.", "Bong.\n\nHush.", "Shh."]


def test_a_break_inside_a_paragraph(tmp_path: Path) -> None:
    assert texts(rtf(tmp_path, r"Tick.\page Tock.\page\page Bong.\par")) == [
        "Tick.",
        "Tock.",
        "",
        "Bong.",
    ]


def test_characters(tmp_path: Path) -> None:
    book = rtf(
        tmp_path,
        r"caf\'e9 \u233? \ldblquote Oh\rdblquote  whirr\_tick good\~luck gran\-dad \emdash  \{x\}"
        r" {\uc2\u8217''}s \u-10179?\u-8704?\line a\tab b\par",
    )
    assert texts(book) == ["café é “Oh” whirr-tick good luck grandad — {x} ’s 😀\na b"]


def test_deleted_hidden_and_furniture_are_left_out(tmp_path: Path) -> None:
    book = rtf(
        tmp_path,
        r"{\info{\title The Goose}{\author Una}}{\header Vale / Goose\par}{\*\generator X;}"
        r"The goose {\deleted sad}{\revised sat} down.{\v secret}{\*\annotation Hm?}"
        r"{\pict\pngblip 89504e47}{\listtext 1.\tab}\par",
    )
    assert texts(book) == ["The goose sat down."]
    assert book.title == "The Goose"
    assert book.remarks == ("The file has 2 tracked changes; they are read as accepted.",)


def test_a_deleted_paragraph_end(tmp_path: Path) -> None:
    assert texts(rtf(tmp_path, r"Tick, {\deleted\par}tock.\par")) == ["Tick, tock."]


def test_styles_fields_boxes_and_footnotes(tmp_path: Path) -> None:
    book = rtf(
        tmp_path,
        r"\pard\s2 Page 2: The Pond\par\pard\plain See {\field{\*\fldinst HYPERLINK x}{\fldrslt the goose}}."
        r"{\footnote\pard A bird.}\par{\field{\*\fldinst  PAGE }{\fldrslt 2}}\par"
        r"\pard{\b Page 3}\par Tick.{\shp{\*\shpinst{\sp{\sn x}{\sv 1}}{\shptxt\pard Tock!\par}}}\par",
    )
    assert labels(book) == ["Page 2: The Pond", "Page 3"]
    assert said(book.pages[0]) == [
        ("story", "See the goose."),
        ("back matter", "A bird."),
        ("folio", "2"),
    ]
    assert said(book.pages[1]) == [("story", "Tick."), ("story", "Tock!")]


def test_tables_of_spreads(tmp_path: Path) -> None:
    rows = "".join(
        rf"\trowd\cellx1\cellx2\cellx3\pard\intbl {a}\cell {b}\cell {c}\cell\row "
        for a, b, c in (
            ("Spread", "Text", "Art"),
            ("1", "Tick.", "a clock"),
            ("2", "Tock.", "a goose"),
        )
    )
    book = rtf(tmp_path, rows + r"\pard ")
    assert labels(book) == ["Spread 1", "Spread 2"]
    assert said(book.pages[1]) == [("story", "Tock."), ("note", "a goose")]


def test_other_encodings(tmp_path: Path) -> None:
    path = tmp_path / "goose.rtf"
    path.write_bytes(rb"{\rtf1\mac Caf\'8e \'d2Oh\'d3.\par}")
    assert texts(read(path)) == ["Café “Oh”."]
    path.write_bytes(
        rb"{\rtf1\ansi\ansicpg1252{\fonttbl{\f1\fcharset238 X;}}\f1 \'9ea\'9eel the goose.\par}"
    )
    assert texts(read(path)) == ["žažel the goose."]


def test_a_file_that_breaks_off(tmp_path: Path) -> None:
    path = tmp_path / "goose.rtf"
    path.write_bytes(rb"{\rtf1\ansi {\b Tick. Toc")
    book = read(path)
    assert texts(book) == ["Tick. Toc"]
    assert "breaks off" in book.remarks[0]
