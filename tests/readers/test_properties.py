"""What holds of every manuscript, in every format; and of every file, manuscript or not."""

from __future__ import annotations

import tempfile
import zipfile
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from lxml import etree

from proofkit.book import Book, Role
from proofkit.problem import Unusable
from proofkit.readers.read import read
from tests.readers.writers import Line, word_paragraph, write_rtf, write_word, written, zipped

SUFFIXES = (".docx", ".odt", ".rtf", ".md", ".txt")
WORDS = [
    "goose", "clock", "Tock", "café", "whirr-tick", "don’t", "1,000", "“Oh!”", "—", "–", "…", "naïve",
    "(so there)", "[illo: a hat]", "page", "spread", "left", "The", "by", "for", "😀", "tick,", "bong.",
]  # fmt: skip
SPACES = st.sampled_from([" ", " ", " ", "  ", "   "])


@st.composite
def sentences(draw: st.DrawFn) -> str:
    words = draw(st.lists(st.sampled_from(WORDS), min_size=1, max_size=30))
    spaced = "".join(word + draw(SPACES) for word in words)
    return f"Goose {spaced.strip()} home."


@st.composite
def verses(draw: st.DrawFn) -> str:
    lines = draw(st.lists(st.lists(st.sampled_from(WORDS[:6]), max_size=4), min_size=3, max_size=5))
    return "\n".join(" ".join(["Tick", *words]) + "," for words in lines)


@st.composite
def manuscripts(draw: st.DrawFn) -> list[Line]:
    """A title page, then marked pages of prose and verse, blank ones among them."""
    lines = [Line(kind="title", text="The Clockwork Goose"), Line(kind="text", text="by Una Vale")]
    kind = draw(st.sampled_from(["Page {}", "[Page {}]", "Spread {}", "Pages {}–{}", "p. {}:"]))
    for number in draw(st.lists(st.integers(1, 40), min_size=1, max_size=6)):
        lines.append(Line(kind="mark", text=kind.format(number, number + 1)))
        paragraphs = draw(st.lists(st.one_of(sentences(), verses()), max_size=3))
        lines += [Line(kind="text", text=text) for text in paragraphs]
    lines.append(Line(kind="text", text="Goose slept."))
    return lines


@st.composite
def broken_manuscripts(draw: st.DrawFn) -> list[Line]:
    """Pages parted by breaks alone, the inner ones blank at times."""
    first, *pages = draw(st.lists(st.lists(sentences(), max_size=2), min_size=2, max_size=6))
    lines = [Line(kind="text", text=text) for text in [*first, "Goose woke up."]]
    for page in pages:
        lines.append(Line(kind="break"))
        lines += [Line(kind="text", text=text) for text in page]
    return [*lines, Line(kind="text", text="Goose slept.")]


def summary(book: Book) -> list[tuple[object, ...]]:
    return [
        (p.label, p.folios, p.spread, p.role, p.text, p.notes, tuple(q.role for q in p.paragraphs))
        for p in book.pages
    ]


@given(st.one_of(manuscripts(), broken_manuscripts()))
@settings(max_examples=80, deadline=None)
def test_the_same_story_reads_alike_in_all_formats(lines: list[Line]) -> None:
    with tempfile.TemporaryDirectory() as folder:
        books = [read(written(lines, suffix, Path(folder))) for suffix in SUFFIXES]
    first, *others = books
    for suffix, other in zip(SUFFIXES[1:], others, strict=True):
        assert summary(other) == summary(first), suffix
        assert (other.title, other.paginated) == (first.title, first.paginated)


@given(manuscripts())
@settings(max_examples=80, deadline=None)
def test_labels_and_texts_are_the_authors(lines: list[Line]) -> None:
    wanted: list[tuple[str, str]] = []
    for line in lines[2:]:
        if line.kind == "mark":
            wanted.append((line.text.strip("[]:"), ""))
        else:
            label, text = wanted[-1]
            wanted[-1] = (label, f"{text}\n\n{line.text}" if text else line.text)
    with tempfile.TemporaryDirectory() as folder:
        book = read(written(lines, ".docx", Path(folder)))
    assert [(page.label, page.text) for page in book.pages[1:]] == wanted


@given(st.one_of(manuscripts(), broken_manuscripts()), st.sampled_from(SUFFIXES))
@settings(max_examples=80, deadline=None)
def test_paragraphs_tile_their_page(lines: list[Line], suffix: str) -> None:
    with tempfile.TemporaryDirectory() as folder:
        book = read(written(lines, suffix, Path(folder)))
    assert [page.number for page in book.pages] == list(range(1, len(book.pages) + 1))
    for page in book.pages:
        parts = [page.text[p.start : p.end] for p in page.paragraphs]
        assert "\n\n".join(parts) == page.text
        assert all(part == part.strip() and part for part in parts)
        assert len(page.prose) == len(page.text)
        story = [(p.start, p.end) for p in page.paragraphs if p.role is Role.STORY]
        for start, end in page.notes:
            assert any(first <= start < end <= last for first, last in story)
        assert list(page.notes) == sorted(page.notes)


@given(manuscripts(), st.sampled_from([".docx", ".odt", ".md", ".txt"]))
@settings(max_examples=80, deadline=None)
def test_locators_find_the_paragraph_again(lines: list[Line], suffix: str) -> None:
    with tempfile.TemporaryDirectory() as folder:
        path = written(lines, suffix, Path(folder))
        book, places = read(path), _places(path)
    for page in book.pages:
        for paragraph in page.paragraphs:
            kind, number = paragraph.locator.split()
            assert kind == ("line" if suffix in {".md", ".txt"} else "paragraph")
            found = places[int(number) - 1]
            first_line = page.text[paragraph.start : paragraph.end].split("\n")[0]
            assert first_line.split()[:2] == found.split()[:2] or first_line.split()[0] in found


def _places(path: Path) -> list[str]:
    """The texts of a file's paragraphs, or its lines, in order."""
    if path.suffix in {".md", ".txt"}:
        return path.read_text(encoding="utf-8").split("\n")
    with zipfile.ZipFile(path) as package:
        part = "word/document.xml" if path.suffix == ".docx" else "content.xml"
        root = etree.fromstring(package.read(part))
    return ["".join(p.itertext()) for p in root.iter("{*}p")]


@given(st.binary(max_size=400), st.sampled_from([*SUFFIXES, ""]))
@settings(max_examples=80, deadline=None)
def test_any_bytes_are_a_book_or_a_sentence(data: bytes, suffix: str) -> None:
    _read_or_refused(data, suffix)


@given(st.lists(st.tuples(st.integers(0, 10_000), st.binary(min_size=1, max_size=4)), max_size=6))
@settings(max_examples=80, deadline=None)
def test_a_spoilt_package_is_a_book_or_a_sentence(edits: list[tuple[int, bytes]]) -> None:
    with tempfile.TemporaryDirectory() as folder:
        path = write_word(Path(folder) / "a", word_paragraph("Tick.") * 3)
        _read_or_refused(_edited(path.read_bytes(), edits), ".docx")


@given(st.lists(st.tuples(st.integers(0, 10_000), st.binary(min_size=1, max_size=4)), max_size=6))
@settings(max_examples=80, deadline=None)
def test_spoilt_xml_is_a_book_or_a_sentence(edits: list[tuple[int, bytes]]) -> None:
    with tempfile.TemporaryDirectory() as folder:
        path = write_word(Path(folder) / "a", word_paragraph("Tick.") * 3)
        with zipfile.ZipFile(path) as package:
            parts = {name: package.read(name) for name in package.namelist()}
    parts["word/document.xml"] = _edited(parts["word/document.xml"], edits)
    _read_or_refused(zipped(parts), ".docx")


@given(st.text(alphabet="\\{}*'abcpuls0123456789 -;\n", max_size=200))
@settings(max_examples=80, deadline=None)
def test_any_rich_text_is_a_book_or_a_sentence(body: str) -> None:
    with tempfile.TemporaryDirectory() as folder:
        data = write_rtf(Path(folder) / "a", body).read_bytes()
    _read_or_refused(data, ".rtf")


@pytest.mark.parametrize("suffix", [".md", ".txt"])
@given(text=st.text(alphabet="#*-[](){}<>|`\\_ \t\n\fPage 123spread:left—“”é", max_size=200))
@settings(max_examples=80, deadline=None)
def test_any_text_is_a_book_or_a_sentence(suffix: str, text: str) -> None:
    _read_or_refused(text.encode(), suffix)


def _edited(data: bytes, edits: list[tuple[int, bytes]]) -> bytes:
    spoilt = bytearray(data)
    for place, new in edits:
        at = place % len(spoilt)
        spoilt[at : at + len(new)] = new
    return bytes(spoilt)


def _read_or_refused(data: bytes, suffix: str) -> None:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / f"goose{suffix}"
        path.write_bytes(data)
        try:
            book = read(path)
        except Unusable as refusal:
            assert "goose" in str(refusal)
        else:
            assert book.pages
