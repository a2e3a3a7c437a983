"""The work of ``proofkit begin``: a few questions, and the file that holds the answers."""

from __future__ import annotations

import difflib
import sys
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

import tomlkit

from proofkit.cli.guard import Exit
from proofkit.cli.options import EnglishAsked
from proofkit.own_file import FILE_NAME
from proofkit.problem import Unusable
from proofkit.reading.bands import band_named, band_names
from proofkit.rulings.keeping import HEAD, begin
from proofkit.settings import AUTO, USUAL_AGE_BAND

_STYLE = """
# How this book does things, where you have decided it; the rest is as the book mostly does it.
# Take the sign # away to make one of these lines count:
#
# [style]
# dash = "spaced en rule"
# names = ["Mr Tibbs", "Zoë"]
# words = ["bedtime", "honk-a-lonk"]
"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Request:
    """What was asked for on the command line; None is what was not."""

    folder: Path
    title: str | None = None
    age_band: str | None = None
    english: str | None = None


def begin_book(request: Request) -> Exit:
    """Ask for what is not given and write it down. Raises Unusable, with nothing written, if it can't."""
    file = request.folder / FILE_NAME
    _refuse(request, file)
    answers = _asked(request) if sys.stdin.isatty() and sys.stdout.isatty() else request
    begin(file, _text(answers))
    print(f"Written to {file}. Every manuscript in that folder is a draft of this book now.")
    print("Next: proofkit check MANUSCRIPT")
    return Exit.CLEAN


def _refuse(request: Request, file: Path) -> None:
    """Say what can't be, before any question is asked."""
    if request.folder.is_file():
        raise Unusable(f"{request.folder} is a file. Name the folder that it is in.")
    if not request.folder.is_dir():
        raise Unusable(f"There is no folder {request.folder}. Make it first, or name another.")
    if file.exists():
        begin(file, "")  # which says what to do
    if request.age_band is not None:
        band_named(request.age_band)


def _asked(request: Request) -> Request:
    title, band, english = request.title, request.age_band, request.english
    if title is None:
        title = _answer("What is the book called? (Enter: leave it open) ")
    if band is None:
        band = _one_of("Whom is it for?", _bands_with_ages(), USUAL_AGE_BAND)
    if english is None:
        told = {each.value: each.value for each in EnglishAsked}
        told[AUTO] = f"{AUTO}: to be found out from each manuscript"
        english = _one_of("Which English is it in?", told, AUTO)
    return Request(folder=request.folder, title=title, age_band=band, english=english)


def _bands_with_ages() -> dict[str, str]:
    """What is said of each age band in the question."""
    bands = [band_named(name) for name in band_names()]
    return {band.name: f"{band.name}, {band.youngest} to {band.oldest}" for band in bands}


def _one_of(question: str, answers: Mapping[str, str], usual: str) -> str:
    """The answer chosen, by its name or the beginning of it; ``answers`` has what is said of each."""
    print(question, *(f"  {told}" for told in answers.values()), sep="\n")
    prompt = f"(Enter: {usual}) "
    while True:
        answer = _answer(prompt).lower()
        if not answer:
            return usual
        meant = [each for each in answers if each.startswith(answer)]
        meant = meant or difflib.get_close_matches(answer, answers, n=1)
        if len(meant) == 1:
            return meant[0]
        print(f"“{answer}” is none of these.")


def _answer(prompt: str) -> str:
    """What is typed; nothing where the typing has come to its end."""
    try:
        return input(prompt).strip()
    except EOFError:
        print()
        return ""


def _text(answers: Request) -> str:
    document = tomlkit.document()
    if answers.title and answers.title.strip():
        document.add("title", tomlkit.item(answers.title.strip()))
    for name, value, comment in (
        ("age-band", answers.age_band or USUAL_AGE_BAND, ", ".join(band_names())),
        ("english", answers.english or AUTO, ", ".join(EnglishAsked)),
    ):
        document.add(name, tomlkit.item(value).comment(comment))
    return f"{HEAD}\n{document.as_string()}{_STYLE}"
