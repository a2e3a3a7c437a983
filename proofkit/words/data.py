"""Where the word lists are."""

from __future__ import annotations

from pathlib import Path

_PACKAGE = Path(__file__).resolve().parents[1]


def wordlist(name: str) -> Path:
    """The file of that name in ``wordlists/``: beside the code once installed, else in the project."""
    installed = _PACKAGE / "wordlists" / name
    return installed if installed.exists() else _PACKAGE.parent / "wordlists" / name
