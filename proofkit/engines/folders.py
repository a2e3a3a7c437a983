"""Where the engines and their memory are kept on this computer."""

from __future__ import annotations

import os
from pathlib import Path

from platformdirs import user_cache_path

# Names another cache folder than the system's usual one.
CACHE_VARIABLE = "PROOFKIT_CACHE"


def cache_folder() -> Path:
    """The user's cache folder for proofkit, or the one that PROOFKIT_CACHE names. It may not exist."""
    chosen = os.environ.get(CACHE_VARIABLE)
    return Path(chosen).expanduser() if chosen else user_cache_path("proofkit", appauthor=False)


def grammar_engine_folder(version: str) -> Path:
    """Where the files of that version of the grammar engine are."""
    return cache_folder() / f"grammar-engine-{version}"


def memory_file() -> Path:
    """The database of what the engines said before; the number is its layout's."""
    return cache_folder() / "memory-1.sqlite3"
