"""OpenDocument texts as LibreOffice and others write them."""

from __future__ import annotations

from pathlib import Path

from proofkit.book import Book
from proofkit.readers.read import read
from tests.readers.reading import labels, said, texts
from tests.readers.writers import ODT_NAMESPACES, odt_paragraph, write_odt


def odt(folder: Path, *body: str, **parts: str) -> Book:
    return read(write_odt(folder / "goose.odt", "".join(body), **parts))


def test_breaks_before_and_after(tmp_path: Path) -> None:
    book = odt(
        tmp_path,
        odt_paragraph("Tick."),
        odt_paragraph("Tock.", style="P1"),
        odt_paragraph("Bong.", style="P2"),
        odt_paragraph("Hush."),
    )
    assert texts(book) == ["Tick.", "Tock.\n\nBong.", "Hush."]


def test_soft_page_breaks_are_the_programs(tmp_path: Path) -> None:
    book = odt(tmp_path, odt_paragraph("Tick."), "<text:soft-page-break/>", odt_paragraph("Tock."))
    assert texts(book) == ["Tick.\n\nTock."]
    assert not book.paginated


def test_tracked_changes_comments_and_spaces(tmp_path: Path) -> None:
    book = odt(
        tmp_path,
        "<text:tracked-changes><text:changed-region><text:deletion>"
        "<text:p>sad</text:p></text:deletion></text:changed-region>"
        "<text:changed-region><text:insertion/></text:changed-region></text:tracked-changes>",
        "<text:p>The goose <text:change/><text:change-start/>sat<text:change-end/>"
        '<office:annotation><text:p>Hm?</text:p></office:annotation> down.<text:s text:c="2"/>'
        "Yes,<text:tab/>she\u00a0did.<text:line-break/>Tick.</text:p>",
    )
    assert texts(book) == ["The goose sat down.  Yes, she did.\nTick."]
    assert book.remarks == ("The file has 2 tracked changes; they are read as accepted.",)


def test_headings_bold_folios_notes_and_boxes(tmp_path: Path) -> None:
    book = odt(
        tmp_path,
        '<text:h text:outline-level="2">Page 2</text:h>',
        "<text:p>The fob.<text:note><text:note-citation>1</text:note-citation><text:note-body>"
        "<text:p>A chain.</text:p></text:note-body></text:note></text:p>",
        '<text:p><text:span text:style-name="B1">Page 3</text:span></text:p>',
        "<text:p>Tick.<draw:frame><draw:text-box><text:p>Tock!</text:p></draw:text-box></draw:frame></text:p>",
        "<text:p><text:page-number>3</text:page-number></text:p>",
    )
    assert labels(book) == ["Page 2", "Page 3"]
    assert said(book.pages[0]) == [("story", "The fob."), ("back matter", "A chain.")]
    assert said(book.pages[1]) == [("story", "Tick."), ("story", "Tock!"), ("folio", "3")]


def test_tables_of_spreads(tmp_path: Path) -> None:
    def row(*cells: str) -> str:
        inner = "".join(f"<table:table-cell>{odt_paragraph(c)}</table:table-cell>" for c in cells)
        return f"<table:table-row>{inner}</table:table-row>"

    book = odt(
        tmp_path,
        "<table:table><table:table-header-rows>"
        + row("Page", "Text", "Art notes")
        + "</table:table-header-rows>",
        row("2", "Tick.", "a clock") + row("3", "Tock.", "a goose") + "</table:table>",
    )
    assert labels(book) == ["Page 2", "Page 3"]
    assert said(book.pages[0]) == [("story", "Tick."), ("note", "a clock")]


def test_the_files_own_title(tmp_path: Path) -> None:
    meta = (
        f"<office:document-meta {ODT_NAMESPACES}><office:meta><dc:title>The Goose</dc:title>"
        "</office:meta></office:document-meta>"
    )
    book = odt(tmp_path, odt_paragraph("It was late, and nothing ticked."), meta=meta)
    assert book.title == "The Goose"
