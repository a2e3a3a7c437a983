from __future__ import annotations

import errno
from pathlib import Path
from typing import NoReturn

import pytest

from proofkit.problem import Unusable
from proofkit.reports.writing import check_target, make_folder, write_report


def files_in(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


def full(*_args: object) -> NoReturn:
    raise OSError(errno.ENOSPC, "No space left on device")


def test_a_report_is_written_and_written_again(tmp_path: Path) -> None:
    target = tmp_path / "goat.json"
    write_report(target, b"first")
    write_report(target, b"second")
    assert target.read_bytes() == b"second"
    assert files_in(tmp_path) == ["goat.json"]


def test_when_the_last_step_fails_the_old_report_stays_whole(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / "goat.json"
    write_report(target, b"first")
    monkeypatch.setattr(Path, "replace", full)
    with pytest.raises(Unusable, match=r"goat\.json.*no space left on device"):
        write_report(target, b"second")
    assert target.read_bytes() == b"first"
    assert files_in(tmp_path) == ["goat.json"]


def test_a_stop_in_the_middle_leaves_nothing_behind(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def stopped(*_args: object) -> NoReturn:
        raise KeyboardInterrupt

    monkeypatch.setattr(Path, "replace", stopped)
    with pytest.raises(KeyboardInterrupt):
        write_report(tmp_path / "goat.json", b"half")
    assert files_in(tmp_path) == []


@pytest.mark.skipif(
    not Path("/dev/full").exists(), reason="the system has no device that is always full"
)
def test_a_full_disk_is_one_clear_sentence(tmp_path: Path) -> None:
    # The part file is led to a device that is always full.
    (tmp_path / "full").symlink_to("/dev/full")
    with pytest.raises(Unusable, match="could not be written"):
        write_report_through(tmp_path / "full", tmp_path / "goat.json")
    assert files_in(tmp_path) == ["full"]


def write_report_through(device: Path, target: Path) -> None:
    original = Path.open

    def to_device(_path: Path, *_args: object, **_options: object) -> object:
        return original(device, "wb", buffering=0)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(Path, "open", to_device)
        write_report(target, b"x" * 100)


def test_a_link_keeps_leading_where_it_led(tmp_path: Path) -> None:
    (tmp_path / "real").mkdir()
    link = tmp_path / "goat.json"
    link.symlink_to(tmp_path / "real" / "goat.json")
    write_report(link, b"{}")
    assert link.is_symlink()
    assert (tmp_path / "real" / "goat.json").read_bytes() == b"{}"


def test_a_manuscript_is_never_a_target(tmp_path: Path) -> None:
    manuscript = tmp_path / "goat.docx"
    manuscript.write_bytes(b"story")
    (tmp_path / "other-name.json").hardlink_to(manuscript)
    for name in ("goat.docx", "other-name.json", "./goat.docx"):
        with pytest.raises(Unusable, match="is the manuscript itself"):
            check_target(tmp_path / name, [manuscript])


@pytest.mark.parametrize("name", ["second.docx", "notes.txt", "poem.md", "cover.png", "story"])
def test_a_file_that_may_be_the_authors_is_not_replaced(tmp_path: Path, name: str) -> None:
    (tmp_path / name).write_bytes(b"mine")
    with pytest.raises(Unusable, match="may be a text of yours"):
        check_target(tmp_path / name, [])


@pytest.mark.parametrize("name", ["goat.json", "goat.CSV", "goat.report.txt"])
def test_an_older_report_may_be_replaced(tmp_path: Path, name: str) -> None:
    (tmp_path / name).write_bytes(b"old")
    check_target(tmp_path / name, [tmp_path / "goat.docx"])


def test_a_new_name_may_be_anything(tmp_path: Path) -> None:
    check_target(tmp_path / "goat.txt", [tmp_path / "goat.docx"])


def test_a_folder_that_is_not_there_is_said_before_the_work(tmp_path: Path) -> None:
    with pytest.raises(Unusable, match="There is no folder"):
        check_target(tmp_path / "away" / "goat.json", [])


def test_a_device_is_not_replaced() -> None:
    with pytest.raises(Unusable, match="already there"):
        check_target(Path("/dev/null"), [])


def test_a_folder_for_reports_is_made_once(tmp_path: Path) -> None:
    make_folder(tmp_path / "a" / "b")
    make_folder(tmp_path / "a" / "b")
    assert (tmp_path / "a" / "b").is_dir()
    (tmp_path / "file").write_bytes(b"")
    with pytest.raises(Unusable, match="is a file"):
        make_folder(tmp_path / "file")
