"""Italics are found again in the page's own offsets, whatever the file's format."""

from __future__ import annotations

import tempfile
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from proofkit.book import Page
from proofkit.readers.italics import Italics, italics_of
from proofkit.readers.read import read
from tests.readers.writers import W, rtf_text, write_odt, write_rtf, write_word

SUFFIXES = (".docx", ".odt", ".rtf", ".md")
WORDS = st.sampled_from(
    ["goose", "clock", "don’t", "café", "😀tick", "the", "the", "Bong!", "e\u0301tude"]
)
# Two pieces of one kind never stand side by side: they would be one.
PIECES = st.lists(st.lists(WORDS, min_size=1, max_size=3).map(" ".join), min_size=1, max_size=6)


def italic(page: Page) -> list[str]:
    return [page.text[start:end] for start, end in page.emphasis]


def manuscript(paragraphs: list[list[str]], suffix: str, folder: Path) -> Path:
    """Pages of one paragraph each; every second piece of a paragraph is italic."""
    path = folder / f"goose{suffix}"
    texts = [[(text, at % 2 == 1) for at, text in enumerate(pieces)] for pieces in paragraphs]
    if suffix == ".docx":
        return write_word(path, "".join(map(_word, texts)))
    if suffix == ".odt":
        return write_odt(path, "".join(map(_odt, texts)))
    if suffix == ".rtf":
        return write_rtf(path, "".join(map(_rtf, texts)))
    parts = ("\n\n".join(_markdown(pieces) for pieces in texts), "\n")
    path.write_text("".join(parts), encoding="utf-8")
    return path


def _word(pieces: list[tuple[str, bool]]) -> str:
    runs = "<w:r><w:t xml:space='preserve'> </w:t></w:r>".join(
        f"<w:r>{'<w:rPr><w:i/></w:rPr>' if italic else ''}<w:t>{text}</w:t></w:r>"
        for text, italic in pieces
    )
    return f"<w:p><w:r><w:t xml:space='preserve'>Page 1: </w:t></w:r>{runs}</w:p>"


def _odt(pieces: list[tuple[str, bool]]) -> str:
    runs = " ".join(
        f'<text:span text:style-name="I1">{text}</text:span>' if italic else text
        for text, italic in pieces
    )
    return f"<text:p>Page 1: {runs}</text:p>"


def _rtf(pieces: list[tuple[str, bool]]) -> str:
    runs = " ".join(
        f"{{\\i {rtf_text(text)}}}" if italic else rtf_text(text) for text, italic in pieces
    )
    return f"\\pard Page 1: {runs}\\par\n"


def _markdown(pieces: list[tuple[str, bool]]) -> str:
    return "Page 1: " + " ".join(f"*{text}*" if italic else text for text, italic in pieces)


@given(st.lists(PIECES, min_size=1, max_size=4), st.sampled_from(SUFFIXES))
@settings(max_examples=80, deadline=None)
def test_each_italic_piece_is_found_again(paragraphs: list[list[str]], suffix: str) -> None:
    with tempfile.TemporaryDirectory() as folder:
        book = read(manuscript(paragraphs, suffix, Path(folder)))
    wanted = [piece.replace("e\u0301", "é") for pieces in paragraphs for piece in pieces[1::2]]
    assert [text for page in book.pages for text in italic(page)] == wanted


@given(st.lists(st.tuples(st.text(alphabet="ab \n\r", max_size=6), st.booleans()), max_size=8))
@settings(max_examples=80, deadline=None)
def test_ranges_hold_just_the_italic_letters(pieces: list[tuple[str, bool]]) -> None:
    whole = "".join(text for text, _ in pieces)
    ranges = italics_of(pieces).within(whole)
    found = "".join(whole[start:end] for start, end in ranges)
    wanted = "".join(text for text, slanted in pieces if slanted)
    assert "".join(found.split()) == "".join(wanted.split())
    assert list(ranges) == sorted(ranges)
    assert all(whole[start:end] == whole[start:end].strip() for start, end in ranges)


@given(st.text(alphabet="ab ", max_size=6), st.text(alphabet="ab ", min_size=1, max_size=6))
def test_what_is_cut_off_the_front_moves_none(front: str, rest: str) -> None:
    pieces = [(front, False), (rest, True)]
    ranges = italics_of(pieces).within(rest)
    assert "".join(
        rest[start:end] for start, end in ranges
    ).split() == rest.strip().split() or not (rest.strip())


def test_a_text_that_is_not_the_paragraphs_has_none() -> None:
    assert italics_of([("The ", False), ("Salty Sue", True)]).within("Another one") == ()
    assert Italics().within("The Salty Sue") == ()


STYLES = (
    f"<w:styles {W}>"
    '<w:style w:type="character" w:styleId="Sound"><w:name w:val="Sound"/>'
    "<w:rPr><w:i/></w:rPr></w:style>"
    '<w:style w:type="paragraph" w:styleId="Thought"><w:name w:val="Thought"/>'
    "<w:rPr><w:i/></w:rPr></w:style>"
    '<w:style w:type="paragraph" w:styleId="Dream"><w:basedOn w:val="Thought"/></w:style>'
    "</w:styles>"
)


@pytest.mark.parametrize(
    ("style", "run", "slanted"),
    [
        ("", '<w:rStyle w:val="Sound"/>', True),
        ("Dream", "", True),
        ("Dream", '<w:i w:val="0"/>', False),
        ("Thought", '<w:rStyle w:val="Sound"/>', False),
        ("Thought", "<w:i/>", True),
        ("", '<w:i w:val="false"/>', False),
    ],
)
def test_word_styles_make_italics(tmp_path: Path, style: str, run: str, slanted: bool) -> None:  # noqa: FBT001 - a case of a table
    body = (
        f'<w:p><w:pPr><w:pStyle w:val="{style}"/></w:pPr>'
        f"<w:r><w:rPr>{run}</w:rPr><w:t>Splash went the goose.</w:t></w:r></w:p>"
    )
    book = read(write_word(tmp_path / "goose.docx", body, styles=STYLES))
    assert italic(book.pages[0]) == (["Splash went the goose."] if slanted else [])


def test_upright_inside_an_italic_opendocument_paragraph(tmp_path: Path) -> None:
    body = (
        '<text:p text:style-name="I2">I wish, thought <text:span text:style-name="U1">Tock'
        "</text:span>, for a key.</text:p>"
    )
    book = read(write_odt(tmp_path / "goose.odt", body))
    assert italic(book.pages[0]) == ["I wish, thought", ", for a key."]


def test_italics_in_a_list_and_a_table_of_markdown(tmp_path: Path) -> None:
    path = tmp_path / "goose.md"
    path.write_text("1. One *big* goose.\n\n- a _small_ one\n\n**not** this ***but*** that\n")
    pages = read(path).pages
    assert [text for page in pages for text in italic(page)] == ["big", "small", "but"]


def test_rich_text_turns_italics_off_again(tmp_path: Path) -> None:
    path = write_rtf(
        tmp_path / "goose.rtf", r"\pard A {\i tick\i0  tock} and \i bong\plain  gone.\par"
    )
    assert italic(read(path).pages[0]) == ["tick", "bong"]
