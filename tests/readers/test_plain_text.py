"""Plain text: wrapped lines, long lines, verse; and encodings."""

from __future__ import annotations

from pathlib import Path

import pytest

from proofkit.problem import Unusable
from proofkit.readers.read import read
from tests.readers.reading import read_text, texts

STORY = "“Tick,” said the café clock – and Zoë’s goose…"


def test_wrapped_lines_are_joined(tmp_path: Path) -> None:
    book = read_text(
        tmp_path, "The goose sat on the old clock and\n  it ticked all day. She\nliked it.\n"
    )
    assert texts(book) == ["The goose sat on the old clock and it ticked all day. She liked it."]


def test_verse_keeps_its_lines(tmp_path: Path) -> None:
    verse = "Tick went the clock,\nTock went the goose,\nBong went the tower,\nAnd all ran loose."
    assert texts(read_text(tmp_path, verse)) == [verse]


def test_two_short_lines_with_room_left(tmp_path: Path) -> None:
    book = read_text(
        tmp_path,
        "The goose sat on the old clock and it ticked and ticked\nall day.\n\nUp she went.\nDown she came.\n",
    )
    assert texts(book)[0].endswith("Up she went.\nDown she came.")


def test_prose_that_happens_to_wrap_before_capitals(tmp_path: Path) -> None:
    text = (
        "The goose had been sitting on the old clock for a very long day.\n"
        "Then the goose of the baker came along the wide and windy road.\n"
        "Nobody knew why.\n"
    )
    assert "\n" not in texts(read_text(tmp_path, text))[0]


def test_each_long_line_is_a_paragraph(tmp_path: Path) -> None:
    long = "The goose sat on the clock " * 6 + "and it ticked."
    assert texts(read_text(tmp_path, f"{long}\n{long}\n")) == [f"{long}\n\n{long}"]


def test_runs_of_spaces_stay(tmp_path: Path) -> None:
    assert texts(read_text(tmp_path, "Tick.  Tock.\u00a0 Bong.\n")) == ["Tick.  Tock.  Bong."]


@pytest.mark.parametrize("ends", ["\r\n", "\r", "\n"])
def test_line_ends(tmp_path: Path, ends: str) -> None:
    book = read_text(tmp_path, f"Page 2{ends}{ends}Tick.{ends}{ends}Page 3{ends}{ends}Tock.{ends}")
    assert texts(book) == ["Tick.", "Tock."]


@pytest.mark.parametrize(
    "encoding",
    ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "utf-32", "cp1252", "mac_roman"],
)
def test_encodings(tmp_path: Path, encoding: str) -> None:
    path = tmp_path / "goose.txt"
    path.write_bytes(f"Page 2\n\n{STORY}\n\nPage 3\n\nIt’s late.\n".encode(encoding))
    assert texts(read(path)) == [STORY, "It’s late."]


def test_mixed_encodings_are_read_and_said(tmp_path: Path) -> None:
    path = tmp_path / "goose.txt"
    path.write_bytes("Zoë’s goose.\n\n".encode() + "Zoë’s clock.\n".encode("cp1252"))
    book = read(path)
    assert texts(book) == ["Zoë’s goose.\n\nZoë’s clock."]
    assert "mixes two encodings" in book.remarks[0]


def test_text_that_was_garbled_before(tmp_path: Path) -> None:
    path = tmp_path / "goose.txt"
    path.write_bytes("It’s late, said the goose.\n".encode().decode("cp1252").encode())
    assert "garbled" in read(path).remarks[0]


def test_unknown_encodings_are_refused(tmp_path: Path) -> None:
    path = tmp_path / "goose.txt"
    path.write_bytes("the goose sat on the clock".encode("cp037"))
    with pytest.raises(Unusable, match=r"goose\.txt"):
        read(path)


def test_a_cut_utf16_file_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "goose.txt"
    path.write_bytes("the goose".encode("utf-16")[:-1])
    with pytest.raises(Unusable, match="breaks off"):
        read(path)
