"""What the author chose for a book: its English, its age band, its style, its companions.

A file ``proofkit.toml`` in the manuscript's folder may hold the book's own choices:

    title = "The Clockmaker's Goose"
    english = "british"           # or "american"; "auto", or nothing: proofkit finds out from the book
    age-band = "picture"
    series = ["../book 1", "../book 2/goose.docx"]
    words-a-minute = 150          # how fast it is read aloud
    grammar-server = "http://localhost:8081"

    [style]
    dash = "spaced en rule"
    names = ["Mr Tock"]
    words = ["bedtime"]

What is asked for on the command line comes before what stands in the file.
"""

from __future__ import annotations

import difflib
from dataclasses import dataclass, field
from enum import StrEnum
from pathlib import Path

from proofkit.own_file import FILE_NAME, OwnFile, read_own_file
from proofkit.problem import Unusable
from proofkit.style import Style

USUAL_AGE_BAND = "picture"
# Common practice for reading aloud; no authority gives a figure.
USUAL_PACE = 150
AUTO = "auto"  # the English: to be found out from the book

_TEXTS = ("title", "english", "age-band", "grammar-server")
_PACE = "words-a-minute"
_NAMES = (*_TEXTS, "series", _PACE, "style", "stet")
_STYLE_LISTS = ("names", "words")


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
    ``title`` is the book's title where the author gave one, else "". ``series`` names folders or
    manuscripts of other books that this one must agree with. ``words_a_minute`` is how fast the book is
    read aloud.
    """

    english: English | None = None
    age_band: str = USUAL_AGE_BAND
    grammar_server: str | None = None
    style: Style = field(default_factory=Style)
    title: str = ""
    series: tuple[Path, ...] = ()
    words_a_minute: int = USUAL_PACE


@dataclass(frozen=True, slots=True, kw_only=True)
class Choices:
    """What was asked for in one run; None leaves it to the book's own settings."""

    english: English | None = None
    age_band: str | None = None
    grammar_server: str | None = None


def own_file_of(manuscript: Path) -> Path:
    """Where the own file of a manuscript's book is, or would be."""
    return manuscript.parent / FILE_NAME


def settings_for(manuscript: Path, asked: Choices) -> Settings:
    """The settings of the book that ``manuscript`` is a draft of.

    Raises Unusable, naming the file and the line at fault, if proofkit.toml is broken.
    """
    return settings_in(read_own_file(own_file_of(manuscript)), asked)


def settings_in(own: OwnFile | None, asked: Choices) -> Settings:
    """The settings that a book's own file gives, after what was asked for. Raises Unusable as above."""
    if own is None:
        return Settings(
            english=asked.english,
            age_band=asked.age_band or USUAL_AGE_BAND,
            grammar_server=asked.grammar_server,
        )
    _refuse_strangers(own)
    texts = {name: _text(own, name) for name in _TEXTS if name in own.values}
    return Settings(
        english=asked.english or _english(own, texts.get("english", AUTO)),
        age_band=asked.age_band or texts.get("age-band", USUAL_AGE_BAND),
        grammar_server=asked.grammar_server or texts.get("grammar-server"),
        style=_style(own),
        title=texts.get("title", "").strip(),
        series=tuple(own.path.parent / other for other in _list(own, "series")),
        words_a_minute=_pace(own),
    )


def _refuse_strangers(own: OwnFile) -> None:
    """A name that is misspelt would be obeyed by nobody, and nobody would know."""
    for name in own.values:
        if name not in _NAMES:
            near = difflib.get_close_matches(name.replace("_", "-"), _NAMES, n=1)
            hint = f"Did you mean {near[0]}?" if near else f"There are {', '.join(_NAMES)}."
            raise Unusable(f"{own.at(own.line_of(name))}: there is no setting “{name}”. {hint}")


def _text(own: OwnFile, name: str, table: str = "") -> str:
    value = _values(own, table).get(name)
    if not isinstance(value, str):
        raise Unusable(
            f'{own.at(own.line_of(name, table))}: {name} must be in quotation marks, as in {name} = "…".'
        )
    return value


def _pace(own: OwnFile) -> int:
    pace = own.values.get(_PACE, USUAL_PACE)
    if not isinstance(pace, int) or isinstance(pace, bool) or pace < 1:
        raise Unusable(
            f"{own.at(own.line_of(_PACE))}: {_PACE} must be a whole number of words, as in {_PACE} = {USUAL_PACE}."
        )
    return pace


def _list(own: OwnFile, name: str, table: str = "") -> tuple[str, ...]:
    value = _values(own, table).get(name, [])
    if not isinstance(value, list) or not all(isinstance(item, str) for item in value):
        raise Unusable(
            f"{own.at(own.line_of(name, table))}: {name} must be a list of words in quotation marks, "
            f'as in {name} = ["…", "…"].'
        )
    return tuple(dict.fromkeys(item.strip() for item in value if item.strip()))


def _values(own: OwnFile, table: str) -> dict[str, object]:
    if not table:
        return dict(own.values)
    value = own.values.get(table, {})
    if not isinstance(value, dict):
        raise Unusable(
            f"{own.at(own.line_of(table))}: {table} must be a table, that is, [{table}] on a line of its own."
        )
    return value


def _english(own: OwnFile, named: str) -> English | None:
    if named == AUTO:
        return None
    try:
        return English(named)
    except ValueError:
        raise Unusable(
            f"{own.at(own.line_of('english'))}: english is “{named}”, and it can be “british”, "
            "“american” or “auto”."
        ) from None


def _style(own: OwnFile) -> Style:
    matters = [matter for matter in _values(own, "style") if matter not in _STYLE_LISTS]
    return Style(
        forms={matter: _text(own, matter, "style") for matter in matters},
        names=_list(own, "names", "style"),
        words=_list(own, "words", "style"),
    )
