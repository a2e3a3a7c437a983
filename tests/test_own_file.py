from __future__ import annotations

from pathlib import Path

import pytest

from proofkit.own_file import OwnFile, read_own_file
from proofkit.problem import Unusable


def own(tmp_path: Path, text: str) -> OwnFile:
    file = tmp_path / "proofkit.toml"
    file.write_bytes(text.encode())
    found = read_own_file(file)
    assert found is not None
    return found


def test_where_there_is_no_file_there_is_none(tmp_path: Path) -> None:
    assert read_own_file(tmp_path / "proofkit.toml") is None


def test_lines_are_counted_however_they_end(tmp_path: Path) -> None:
    for end in ("\n", "\r\n"):
        file = own(tmp_path, end.join(("\ufefftitle = 'x'", "", "[style]", "dash = 'y'", "")))
        assert file.line_of("title") == 1
        assert file.line_of("dash", "style") == 4


@pytest.mark.parametrize(
    "text",
    [
        "\n[style]\ndash = 'x'\n",
        "\n\nstyle.dash = 'x'\n",
        "\n\nstyle = { dash = 'x' }\n",
        "title = 'dash = 1'\n[ 'style' ]\n\"dash\" = 'x'\n",
        "[style]\nnames = ['dash = 3']\ndash='x'\n",
        "dash = 1\n[style]\ndash = 2\n[other]\ndash = 3\n",
    ],
)
def test_the_line_of_a_name_in_a_table(tmp_path: Path, text: str) -> None:
    assert own(tmp_path, text).line_of("dash", "style") == 3


def test_the_line_of_an_item_in_a_list(tmp_path: Path) -> None:
    file = own(tmp_path, "title = 'moon'\n[style]\nwords = [\n 'sun',\n \"moon\",\n]\n")
    assert file.line_of_item("moon", "words", "style") == 5
    assert file.line_of_item("star", "words", "style") == 3


@pytest.mark.parametrize(
    ("content", "line"),
    [
        (b"a = 1\n\nb = 'x\n", 3),
        (b"a = 1\na = 2\n", 2),
        (b'[[stet]]\nkey = "x"\nword = ', 3),
        (b"a = 1\nb = [\n 1,\n 2\n", 4),
        (b"a = 1\nb = 'caf\xe9'\n", 2),
        (b"a = 1\rb = 2", 1),
    ],
)
def test_a_broken_file_is_named_with_its_line(tmp_path: Path, content: bytes, line: int) -> None:
    file = tmp_path / "proofkit.toml"
    file.write_bytes(content)
    with pytest.raises(Unusable) as problem:
        read_own_file(file)
    assert str(file) in str(problem.value)
    assert f"line {line}" in str(problem.value)
    assert "\n" not in str(problem.value)


def test_what_is_no_file_is_said_in_a_sentence(tmp_path: Path) -> None:
    (tmp_path / "proofkit.toml").mkdir()
    with pytest.raises(Unusable, match="can't be read"):
        read_own_file(tmp_path / "proofkit.toml")
