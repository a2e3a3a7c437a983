"""The program as it is started: what it loads, what it says, how it ends."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

import proofkit
from proofkit.reading.bands import band_names

HEAVY = ("spacy", "docx", "rich", "language_tool_python", "msgspec", "lxml", "textstat", "sqlite3")
START = "import sys; from proofkit.cli.main import run; sys.argv[0] = 'proofkit'; "


def proofkit_run(
    *arguments: str, before: str = "run()", **environment: str
) -> subprocess.CompletedProcess[bytes]:
    return subprocess.run(
        [sys.executable, "-c", START + before, *arguments],
        capture_output=True,
        check=False,
        env=os.environ | {"COLUMNS": "80", "PYTHONUTF8": "1"} | environment,
    )


@pytest.mark.parametrize(
    "arguments",
    [["--help"], ["check", "--help"], ["stet", "--help"], ["begin", "--help"], ["--version"]],
)
def test_help_waits_for_no_library(arguments: list[str]) -> None:
    ask = f"import atexit; atexit.register(lambda: print([m for m in {HEAVY} if m in sys.modules])); run()"
    result = proofkit_run(*arguments, before=ask)
    assert result.returncode == 0
    assert result.stdout.decode().rstrip().endswith("[]")


def test_the_help_of_check_documents_the_exit_codes_and_the_age_bands() -> None:
    text = proofkit_run("check", "--help").stdout.decode()
    for code in (
        "0  no errors",
        "1  errors to mend",
        "2  a manuscript",
        "3  finished",
        "130  stopped",
    ):
        assert f" {code}" in text
    for band in band_names():
        assert band in " ".join(text.split())


def test_the_version_is_the_packages() -> None:
    assert proofkit_run("--version").stdout.decode() == f"proofkit {proofkit.__version__}\n"


def test_without_a_command_it_shows_what_there_is() -> None:
    result = proofkit_run()
    assert b"check " in result.stdout + result.stderr
    assert b"Begin with: proofkit check MANUSCRIPT" in result.stdout + result.stderr


@pytest.mark.parametrize("encoding", ["ascii", "latin-1", "cp437"])
def test_a_terminal_that_lacks_characters_gets_the_nearest(encoding: str) -> None:
    result = proofkit_run("explain", "no-such-check", PYTHONIOENCODING=encoding, PYTHONUTF8="0")
    assert result.returncode == 2
    assert 'no check called "no-such-check"' in result.stderr.decode(encoding)


def test_every_sign_of_the_reports_has_a_stand_in() -> None:
    say = "from proofkit.cli.streams import steady_streams as s; s(); print('›the the‹ … ␣ 4–5 “a” é')"
    result = proofkit_run(before=say, PYTHONIOENCODING="ascii", PYTHONUTF8="0")
    assert result.stdout.decode("ascii") == '>the the< ... _ 4-5 "a" ?\n'


def test_a_reader_who_goes_away_hears_no_complaint() -> None:
    process = subprocess.Popen(
        [sys.executable, "-c", START + "run()", "explain"],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
    )
    assert process.stdout is not None
    assert process.stderr is not None
    process.stdout.close()
    complaint = process.stderr.read()
    process.stderr.close()
    assert (process.wait(), complaint) == (141, b"")


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="the system has no device that is full")
def test_output_that_cannot_be_written_is_said_in_a_sentence() -> None:
    with Path("/dev/full").open("wb") as full:
        result = subprocess.run(
            [sys.executable, "-c", START + "run()", "explain"],
            stdout=full,
            stderr=subprocess.PIPE,
            check=False,
        )
    assert result.returncode == 2
    assert b"No space left on device" in result.stderr
    assert b"Traceback" not in result.stderr


@pytest.mark.skipif(sys.platform == "win32", reason="Windows has no such signal")
def test_a_request_to_end_is_heeded_as_ctrl_c_is() -> None:
    ends_itself = (
        "import os, signal; import proofkit.cli.explain as explain; "
        "explain._listed = lambda checks: os.kill(os.getpid(), signal.SIGTERM); run()"
    )
    result = proofkit_run("explain", before=ends_itself)
    assert result.returncode == 130
    assert result.stderr.startswith(b"Stopped.")
