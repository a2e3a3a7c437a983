from __future__ import annotations

import os
import signal
import subprocess
import sys
import tomllib
from dataclasses import replace
from itertools import count
from pathlib import Path

import pytest

from proofkit.own_file import read_own_file
from proofkit.problem import Unusable
from proofkit.rulings import keeping
from proofkit.rulings.entry import Entry, as_values
from proofkit.rulings.keeping import HEAD, add, begin
from proofkit.rulings.ruling import rulings_in
from tests.rulings.drafts import TODAY, book_of, entry, found

OWN = """# Mine, all mine.
english = 'british'   # as we speak it

[style]
words = [
    "bedtime",  # not bed-time
]

[[stet]]   # Aunt Merle said so
word = "gonna"
"""

FORTY = """
import sys, datetime
from pathlib import Path
from proofkit.rulings.entry import Entry
from proofkit.rulings.keeping import add
for n in range(5):
    add(Path(sys.argv[1]), [Entry(date=datetime.date(2026, 11, 25), check="a/b", key=f"{sys.argv[2]}{n}")])
"""


def ruling(key: str = "k7f2bcd", *, page: str = "", because: str = "") -> Entry:
    return Entry(
        date=TODAY,
        check="spelling/slip",
        key=key,
        line="a ›slip‹ here",
        page=page,
        because=because,
    )


def test_the_first_ruling_makes_the_file(file: Path) -> None:
    assert add(file, [ruling(page="spread 4", because="her own word")]) == (
        ruling(page="spread 4", because="her own word"),
    )
    assert file.read_text(encoding="utf-8") == (
        f"{HEAD}\n[[stet]]\n"
        'key = "k7f2bcd"\n'
        'check = "spelling/slip"\n'
        'line = "a ›slip‹ here"\n'
        'page = "spread 4"\n'
        'because = "her own word"\n'
        "date = 2026-11-25\n"
    )


@pytest.mark.parametrize("end", ["\n", "\r\n"])
@pytest.mark.parametrize("mark", ["", "\ufeff"])
@pytest.mark.parametrize("last", ["\n", ""])
def test_what_stood_there_stays_to_the_letter(file: Path, end: str, mark: str, last: str) -> None:
    old = f"{mark}{OWN.rstrip()}{last}".replace("\n", end).encode()
    file.write_bytes(old)
    add(file, [ruling()])
    new = file.read_bytes()
    assert new.startswith(old)
    assert new.count(b"\n") == new.count(end.encode())
    assert [each.word or each.key for each in rulings_in(read_own_file(file))] == [
        "gonna",
        "k7f2bcd",
    ]


def test_one_that_is_there_already_is_not_written_again(file: Path) -> None:
    whole = Entry(date=TODAY, check="commas/missing-in-list")
    assert add(file, [ruling(), whole]) == (ruling(), whole)
    before = file.read_bytes()
    assert add(file, [whole, ruling(because="again")]) == ()
    assert file.read_bytes() == before
    assert add(file, [ruling(), ruling("bcdfghj")]) == (ruling("bcdfghj"),)


def test_words_that_would_break_a_file_are_written_so_that_they_are_read_again(file: Path) -> None:
    odd = 'He said "\\no" \'\'\' and """, # [[stet]]\ttab\x07'
    add(file, [ruling(because=odd)])
    add(file, [ruling("bcdfghj")])
    assert [each.because for each in rulings_in(read_own_file(file))] == [odd, ""]


def test_an_issue_of_several_places_is_written_with_the_others(file: Path) -> None:
    book = book_of("A honk-a-lonk of geese", "and a mornign", "two honk-a-lonk more", "the end")
    issues = found(book)
    made = entry(book, issues, replace(issues[0], related=(issues[2].span,)))
    assert made.also == ("A honk-a-lonk of geese and a mornign two ›honk-a-lonk‹ more the end",)
    add(file, [made])
    assert tomllib.loads(file.read_text(encoding="utf-8"))["stet"] == [dict(as_values(made))]
    (kept,) = rulings_in(read_own_file(file))
    assert [passage.quote for passage in kept.also] == ["honk-a-lonk"]


@pytest.mark.parametrize(
    "broken",
    ['english = "british', "[[stet]\n", "stet = 3\n", 'stet = [{ word = "gonna" }]\n', "\xff"],
)
def test_a_file_that_cannot_be_added_to_is_left_as_it_is(file: Path, broken: str) -> None:
    old = broken.encode("latin-1")
    file.write_bytes(old)
    with pytest.raises(Unusable, match=r"proofkit\.toml"):
        add(file, [ruling()])
    assert file.read_bytes() == old
    assert names(file.parent) == [file.name]


def test_a_link_stays_a_link(file: Path, tmp_path: Path) -> None:
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    (elsewhere / "own.toml").write_text(OWN, encoding="utf-8")
    file.symlink_to(elsewhere / "own.toml")
    add(file, [ruling()])
    assert file.is_symlink()
    assert "k7f2bcd" in (elsewhere / "own.toml").read_text(encoding="utf-8")
    assert names(elsewhere) == ["own.toml"]


@pytest.mark.skipif(sys.platform == "win32", reason="Windows has no such permissions")
def test_the_file_keeps_its_permissions(file: Path) -> None:
    file.write_text(OWN, encoding="utf-8")
    file.chmod(0o640)
    add(file, [ruling()])
    assert file.stat().st_mode & 0o777 == 0o640


@pytest.mark.parametrize("failing", ["open", "replace"])
def test_a_folder_that_cannot_be_written_to_is_said_in_a_sentence(
    file: Path, monkeypatch: pytest.MonkeyPatch, failing: str
) -> None:
    file.write_text(OWN, encoding="utf-8")
    true_open = Path.open

    def refused(path: Path, *given: object, **named: object) -> object:
        if path.name.endswith(".part"):
            raise PermissionError(13, "Permission denied")
        return true_open(path, *given, **named)  # type: ignore[call-overload]  # whatever was given

    monkeypatch.setattr(Path, failing, refused)
    monkeypatch.setattr(keeping, "_PAUSE", 0)
    with pytest.raises(Unusable, match=r"could not be written \(permission denied\), and is as it"):
        add(file, [ruling()])
    monkeypatch.undo()
    assert file.read_text(encoding="utf-8") == OWN
    assert names(file.parent) == [file.name]


def test_a_beginning_is_never_written_over_a_file(file: Path) -> None:
    begin(file, "english = 'british'\n")
    for _ in range(2):
        with pytest.raises(Unusable, match="was left as it is"):
            begin(file, "english = 'american'\n")
    assert file.read_text(encoding="utf-8") == "english = 'british'\n"


def test_many_at_once_all_land(file: Path) -> None:
    file.write_text(OWN, encoding="utf-8")
    writers = [
        subprocess.Popen([sys.executable, "-c", FORTY, str(file), letter]) for letter in "bcdfghjk"
    ]
    assert [writer.wait(timeout=60) for writer in writers] == [0] * 8
    kept = rulings_in(read_own_file(file))
    assert sorted(each.key for each in kept if each.key) == sorted(
        f"{letter}{n}" for letter in "bcdfghjk" for n in range(5)
    )
    assert file.read_text(encoding="utf-8").startswith(OWN)
    assert names(file.parent) == [file.name]


@pytest.mark.skipif(not hasattr(os, "fork"), reason="the system can't copy a process")
def test_a_kill_at_any_moment_leaves_the_file_whole(file: Path) -> None:
    """The child kills itself, with no time to tidy up, at the first, second, third … thing it does."""
    for moment in count(1):
        file.write_text(OWN, encoding="utf-8")
        if not killed(file, moment):
            break
        content = file.read_text(encoding="utf-8")
        assert content in (OWN, written(file)), moment
        assert add(file, [ruling("bcdfghj")]), "the lock of the dead one is no obstacle"
        assert names(file.parent) == [file.name]
    assert moment > 10


def killed(file: Path, moment: int) -> bool:
    child = os.fork()
    if child == 0:
        left = [moment]

        def at_the_moment(_event: str, _arguments: tuple[object, ...]) -> None:
            left[0] -= 1
            if left[0] == 0:
                os.kill(os.getpid(), signal.SIGKILL)

        sys.addaudithook(at_the_moment)
        add(file, [ruling()])
        os._exit(0)
    _child, status = os.waitpid(child, 0)
    return os.WIFSIGNALED(status)


def written(file: Path) -> str:
    """What the file is when nobody was killed."""
    other = file.parent.parent / f"{file.parent.name}.toml"
    other.write_text(OWN, encoding="utf-8")
    add(other, [ruling()])
    return other.read_text(encoding="utf-8")


def names(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())
