"""What the author chose for a book: its English, its age band, where the grammar engine is.

A file ``proofkit.toml`` in the manuscript's folder may hold the book's own choices:

    english = "british"           # or "american"; without it, proofkit finds out from the book
    age-band = "picture"
    grammar-server = "http://localhost:8081"

What is asked for on the command line comes before what stands in the file.
"""

from __future__ import annotations

import tomllib
from dataclasses import dataclass, field
from enum import StrEnum
from pathlib import Path

from proofkit.problem import Unusable
from proofkit.style import Style

FILE_NAME = "proofkit.toml"
USUAL_AGE_BAND = "picture"
_NAMES = ("english", "age-band", "grammar-server")


class English(StrEnum):
    """Which English the book is written in."""

    BRITISH = "british"
    AMERICAN = "american"

    @property
    def code(self) -> str:
        """The language tag that the engines know it by."""
        return "en-GB" if self is English.BRITISH else "en-US"


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """One book's settings. ``english`` None means: find out from the book.

    ``grammar_server`` is the address of a grammar engine that already runs, or None for our own.
    ``style`` holds the author's decisions, which come before what the book mostly does.
    """

    english: English | None = None
    age_band: str = USUAL_AGE_BAND
    grammar_server: str | None = None
    style: Style = field(default_factory=Style)


@dataclass(frozen=True, slots=True, kw_only=True)
class Choices:
    """What was asked for in one run; None leaves it to the book's own settings."""

    english: English | None = None
    age_band: str | None = None
    grammar_server: str | None = None


def settings_for(manuscript: Path, asked: Choices) -> Settings:
    """The settings of the book that ``manuscript`` is a draft of.

    Raises Unusable, naming the file and the line or the name at fault, if proofkit.toml is broken.
    """
    own = _own_settings(manuscript.parent / FILE_NAME)
    return Settings(
        english=asked.english or _english(own),
        age_band=asked.age_band or own.get("age-band", USUAL_AGE_BAND),
        grammar_server=asked.grammar_server or own.get("grammar-server"),
    )


def _own_settings(path: Path) -> dict[str, str]:
    try:
        values = tomllib.loads(path.read_text(encoding="utf-8"))
    except FileNotFoundError:
        return {}
    except tomllib.TOMLDecodeError as error:
        raise Unusable(
            f"{path} can't be read: {error}. Mend that place, then check again."
        ) from error
    except (OSError, UnicodeDecodeError) as error:
        raise Unusable(
            f"{path} can't be read. Check that it is a text file you may open."
        ) from error
    for name in _NAMES:
        if not isinstance(values.get(name, ""), str):
            raise Unusable(f'In {path}, {name} must be in quotation marks, as in {name} = "…".')
    return {name: values[name] for name in _NAMES if name in values}


def _english(own: dict[str, str]) -> English | None:
    named = own.get("english", "auto")
    if named == "auto":
        return None
    try:
        return English(named)
    except ValueError:
        raise Unusable(
            f'In {FILE_NAME}, english is "{named}": it can be "british", "american" or "auto".'
        ) from None
