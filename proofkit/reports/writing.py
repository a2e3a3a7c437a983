"""How a report gets into a file: wholly or not at all, and never over a manuscript."""

from __future__ import annotations

import os
import secrets
from collections.abc import Sequence
from contextlib import suppress
from pathlib import Path

from proofkit.problem import Unusable

# What stands at a name with one of these endings was made by proofkit or another program, and can be
# made again. Anything else may be an author's text.
_REPORT_ENDINGS = (".json", ".csv", ".html", ".report.txt")


def write_report(path: Path, content: bytes, what: str = "report") -> None:
    """Put ``content`` at ``path`` in one step: a reader sees the old file or the new one, whole.

    ``what`` is what the author knows it as. Raises Unusable if the folder or the disk doesn't allow
    it; what was there before is left as it was.
    """
    target = path.resolve()
    part = target.with_name(f".proofkit-{secrets.token_hex(6)}.part")
    try:
        with part.open("xb") as file:
            file.write(content)
        part.replace(target)
    except OSError as error:
        raise Unusable(_unwritable(path, error, what)) from error
    finally:
        with suppress(OSError):
            part.unlink(missing_ok=True)


def check_target(path: Path, manuscripts: Sequence[Path], what: str = "report") -> None:
    """Find out before the work is done whether a report may be written to ``path``.

    ``what`` is what the author knows it as. Raises Unusable if that would cost a manuscript, or if
    the folder is not there or not ours.
    """
    if any(_same_file(path, manuscript) for manuscript in manuscripts):
        raise Unusable(
            f"{path} is the manuscript itself, and proofkit never writes over one. Give the {what} another name."
        )
    if path.exists() and not (path.is_file() and path.name.lower().endswith(_REPORT_ENDINGS)):
        raise Unusable(
            f"{path} is already there and may be a text of yours, so the {what} was not written over it. "
            f"Give the {what} another name, or move that file first."
        )
    folder = path.resolve().parent
    if not folder.is_dir():
        raise Unusable(
            f"There is no folder {folder} to write the {what} to. Make it first, or choose another."
        )
    if not os.access(folder, os.W_OK):
        raise Unusable(
            f"The folder {folder} can't be written to. Choose another one for the {what}."
        )


def make_folder(path: Path) -> None:
    """Make the folder that reports are to go into, if it is not there yet."""
    try:
        path.mkdir(parents=True, exist_ok=True)
    except FileExistsError as error:
        raise Unusable(
            f"{path} is a file. Several reports need a folder: give --output the name of one."
        ) from error
    except OSError as error:
        raise Unusable(_unwritable(path, error, "report")) from error


def _same_file(one: Path, other: Path) -> bool:
    try:
        return one.samefile(other)
    except OSError:
        return one.resolve() == other.resolve()


def _unwritable(path: Path, error: OSError, what: str) -> str:
    why = error.strerror or str(error)
    return (
        f"The {what} could not be written to {path} ({why[0].lower()}{why[1:]}). "
        "Nothing was left half written: make room there, or choose another place."
    )
