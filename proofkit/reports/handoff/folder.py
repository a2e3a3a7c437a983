"""How the pack gets to its place: the folder and the .zip beside it, wholly or not at all."""

from __future__ import annotations

import os
import secrets
import shutil
from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path

from proofkit.problem import Unusable
from proofkit.reports.phrases import quoted


def zip_of(folder: Path) -> Path:
    """Where the pack's .zip goes: beside the folder, under its name."""
    return folder.with_name(f"{folder.name}.zip")


def check_folder(folder: Path, manuscript: Path) -> None:
    """Find out before the work is done whether a pack may be put at ``folder``, an absolute path.

    Raises Unusable where something is there already, or where nothing may be written.
    """
    if folder == manuscript.resolve().parent:
        own = quoted(str(manuscript.parent / "proofreader"))
        raise Unusable(
            f"{folder} is the manuscript’s own folder. Give the pack a folder of its own: --output {own}"
        )
    if folder.exists() and not folder.is_dir():
        raise Unusable(f"{folder} is a file. The pack is a folder: give it another name.")
    for there in (folder, zip_of(folder)):
        if there.exists() and not (there.is_dir() and _is_empty(there)):
            raise Unusable(
                f"{there} is already there, and may have work of yours or the proofreader’s in it. Give "
                "the pack another name, or move that first."
            )
    if not folder.parent.is_dir():
        raise Unusable(
            f"There is no folder {folder.parent} to put the pack into. Make it first, or choose another."
        )
    if not os.access(folder.parent, os.W_OK | os.X_OK):
        raise Unusable(
            f"The folder {folder.parent} can't be written to. Choose another one for the pack."
        )


def put_pack(folder: Path, files: Mapping[str, bytes], archive: bytes) -> None:
    """Put the files into ``folder`` and the archive beside it; each appears in one step, whole.

    Raises Unusable if the place or the disk doesn't allow it; then neither is there.
    """
    token = secrets.token_hex(6)
    part = folder.with_name(f".proofkit-{token}.part")
    zip_part = folder.with_name(f".proofkit-{token}.zip.part")
    try:
        part.mkdir()
        for name, content in files.items():
            (part / name).write_bytes(content)
        zip_part.write_bytes(archive)
        _move(part, folder, zip_part)
    except OSError as error:
        raise Unusable(_unwritable(folder, error)) from error
    finally:
        shutil.rmtree(part, ignore_errors=True)
        with suppress(OSError):
            zip_part.unlink(missing_ok=True)


def _move(part: Path, folder: Path, zip_part: Path) -> None:
    """The .zip first: it alone can be taken back in one step."""
    if folder.exists():
        folder.rmdir()  # empty; were it not, this would fail and cost nothing
    archive = zip_of(folder)
    zip_part.replace(archive)
    try:
        part.rename(folder)
    except OSError:
        archive.unlink(missing_ok=True)
        raise


def _is_empty(folder: Path) -> bool:
    try:
        return next(folder.iterdir(), None) is None
    except OSError as error:
        raise Unusable(_unwritable(folder, error)) from error


def _unwritable(folder: Path, error: OSError) -> str:
    why = error.strerror or str(error)
    return (
        f"The pack could not be put at {folder} ({why[0].lower()}{why[1:]}). "
        "Nothing was left half written: make room there, or choose another place."
    )
