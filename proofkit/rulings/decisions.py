"""Whether the author's decisions can all be followed: known matters and forms, and none against another."""

from __future__ import annotations

import difflib
import unicodedata
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from proofkit.own_file import OwnFile, read_own_file
from proofkit.problem import Unusable
from proofkit.rulings.ruling import Ruling, rulings_in
from proofkit.settings import Choices, Settings, own_file_of, settings_in
from proofkit.style import Style

STYLE = "style"
_LISTS = ("names", "words")
_FREE = ("dictionary",)  # named on the style sheet alone: any name will do


@dataclass(frozen=True, slots=True, kw_only=True)
class Decided:
    """All that an author decided about a book: its settings with its style, and the rulings."""

    settings: Settings
    rulings: tuple[Ruling, ...] = ()


def decided_for(manuscript: Path, asked: Choices) -> Decided:
    """What was decided about the book that ``manuscript`` is a draft of, after what was ``asked``.

    Raises Unusable, naming the file and the lines, where that can't be read or can't be followed.
    """
    own = read_own_file(own_file_of(manuscript))
    settings, rulings = settings_in(own, asked), rulings_in(own)
    if own is None:
        return Decided(settings=settings)
    style = checked_style(own, settings.style)
    refuse_contradictions(own, style, rulings)
    return Decided(settings=replace(settings, style=style), rulings=rulings)


def checked_style(own: OwnFile, style: Style) -> Style:
    """The style with each matter and form as the habits name them.

    Hyphens, spaces, underscores and capitals don't count: ``Serial-comma`` is the serial comma. Raises
    Unusable, naming the line and what there is, for a matter or a form that there is not.
    """
    decided: dict[str, str] = {}
    forms = _forms() if style.forms else {}
    for written, form in style.forms.items():
        line = own.line_of(written, STYLE)
        matter = _named(written, forms)
        if matter is None:
            raise Unusable(_no_such(own, line, "matter of style", written, (*forms, *_LISTS)))
        known = form if matter in _FREE else _named(form, forms[matter])
        if known is None:
            raise Unusable(_no_such(own, line, f"form of {matter}", form, forms[matter]))
        if decided.setdefault(matter, known) != known:
            raise Unusable(
                f"{own.at(line)}: {matter} is decided twice, as “{decided[matter]}” and as “{known}”. "
                "Keep one of them."
            )
    return replace(style, forms=decided)


def _forms() -> Mapping[str, tuple[str, ...]]:
    """The forms of each matter that can be decided."""
    # Only now: the habits are many files, and most books have decided nothing yet.
    from proofkit.habits.matters import MATTERS  # noqa: PLC0415

    return {matter.name: matter.forms for matter in MATTERS} | dict.fromkeys(_FREE, ())


def refuse_contradictions(own: OwnFile, style: Style, rulings: Sequence[Ruling]) -> None:
    """Raises Unusable, naming both lines, where two decisions or rulings can't both be followed.

    Two words contradict one another when they have the same letters, and are written differently.
    """
    for name, items in (("names", style.names), ("words", style.words)):
        kept: dict[str, str] = {}
        for item in items:
            other = kept.setdefault(_letters(item), item)
            if other != item:
                lines = [own.line_of_item(each, name, STYLE) for each in (other, item)]
                raise Unusable(_against(own, f"{name} has “{other}”", lines[0], item, lines[1]))
    for ruling in rulings:
        if ruling.word:
            _refuse_ruling(own, style, ruling)


def _refuse_ruling(own: OwnFile, style: Style, ruling: Ruling) -> None:
    """A word that is let stand as the style sheet does not have it."""
    for name, items in (("names", style.names), ("words", style.words)):
        spelt = [item for item in items if _letters(item) == _letters(ruling.word)]
        if spelt and ruling.word not in spelt:
            line = own.line_of_item(spelt[0], name, STYLE)
            raise Unusable(
                _against(own, f"{name} has “{spelt[0]}”", line, ruling.word, ruling.line)
            )


def _against(own: OwnFile, decided: str, line: int | None, instead: str, other: int | None) -> str:
    return (
        f"{own.path} contradicts itself: {decided} (line {line or '?'}), and “{instead}” is to stand too "
        f"(line {other or '?'}). Take one of them out."
    )


def _no_such(own: OwnFile, line: int | None, kind: str, written: str, known: Iterable[str]) -> str:
    names = list(known)
    near = difflib.get_close_matches(written.casefold(), names, n=1)
    hint = f"Did you mean “{near[0]}”? " if near else ""
    return f"{own.at(line)}: there is no {kind} “{written}”. {hint}There are: {'; '.join(names)}."


def _named(written: str, known: Sequence[str] | Mapping[str, object]) -> str | None:
    """The known name that is meant. Some forms differ in their capitals alone: the very same goes first."""
    if written in known:
        return written
    return next((name for name in known if _plain(name) == _plain(written)), None)


def _plain(name: str) -> str:
    return " ".join(name.casefold().replace("-", " ").replace("_", " ").split())


def _letters(word: str) -> str:
    """The letters and figures of a word, less case, accents, hyphens and spaces."""
    return "".join(
        letter for letter in unicodedata.normalize("NFKD", word.casefold()) if letter.isalnum()
    )
