"""The brief: what the book is, what a program has read it for, and what is asked of the proofreader."""

from __future__ import annotations

from collections.abc import Sequence

from proofkit.reading.bands import band_named
from proofkit.report import Report
from proofkit.reports.handoff.paper import Columns, Paper, Part
from proofkit.reports.phrases import about, counted
from proofkit.settings import English

_ENGLISH = {English.BRITISH: "British English", English.AMERICAN: "American English"}
_MACHINE = (
    "spelling, and words mistaken for others that sound or look alike",
    "grammar, words left out and words written twice",
    "commas, stops, dashes, apostrophes, speech marks and spaces",
    "capitals, and names of people and places",
    "what the book writes in two ways: hyphens, numbers, titles, spellings of one English or the other",
    "refrains that differ by a word, and rhymes or lines of verse that stumble",
    "lengths for the age band: of the book, of spreads and of sentences",
    "numbers of pages and spreads in the manuscript, whether they are in order",
)
_NOT_MACHINE = (
    "whether the story holds together, and whether what it says is true",
    "the pictures: whether they show what the words say",
    "anything that is set by the designer: line and page ends, folios, running heads, captions, typefaces",
    "the cover, the imprint page and the ISBN",
    "how the book sounds when it is read aloud",
)
_ASKED = (
    "Read every word, those that a program passed among them.",
    "Correct what is wrong; where something is only unusual, ask. Please leave the voice as it is.",
    "Follow the style sheet. What it marks as open is still to be decided: say what you advise.",
    "Leave standing what the list of rulings has: each was asked about and decided.",
    "Answer the open queries in the copy that has them as comments.",
    "Look through the words to confirm: no dictionary has them, and a slip may hide among them.",
    "Go through the checklist when all else is done, and again once the pages are set.",
)


def brief(report: Report, *, author: str, papers: Sequence[tuple[str, str]]) -> Paper:
    """The brief; ``author`` is as the manuscript has it, or "". ``papers`` are the pack's files and what each is."""
    return Paper(
        name="Brief",
        about=f"For the proofreader. {_opening(about(report))}.",
        parts=(
            Part(heading="The book", table=_book(report, author)),
            Part(heading="What the author asks for", lists=_ASKED),
            Part(heading="Also", says=("(Author: write here what you would like besides.)",)),
            Part(heading="What a program has checked", says=_state(report), lists=_MACHINE),
            Part(heading="What no program has checked", lists=(*_unchecked(report), *_NOT_MACHINE)),
            Part(
                heading="In this pack",
                table=Columns(
                    heads=("file", "what it is"), shares=(0.42, 0.58), rows=tuple(papers)
                ),
            ),
        ),
    )


def _book(report: Report, author: str) -> Columns:
    book = report.manuscript
    extent = [counted(book.words, "word")]
    if book.paginated:
        extent += [counted(book.pages, "page") + " with story"]
        extent += [counted(book.spreads, "spread")] if book.spreads else []
    else:
        extent += ["no pages are marked in the manuscript"]
    rows = (
        ("title", book.title or "(the manuscript gives none)"),
        ("author", author or "(the manuscript names nobody)"),
        ("extent", ", ".join(extent)),
        ("English", _ENGLISH[book.english]),
        ("for whom", band_named(book.age_band).phrase),
    )
    return Columns(heads=("matter", "in this book"), shares=(0.2, 0.8), rows=rows)


def _state(report: Report) -> tuple[str, ...]:
    """How the manuscript stands; errors that are left are no secret."""
    errors, queries = len(report.errors), len(report.queries)
    left = f"it still sees {counted(errors, 'error')}" if errors else "it sees no errors any more"
    asked = counted(queries, "open query") if queries else "no open query"
    stands = len(report.let_stand)
    ruled = f" {counted(stands, 'place')} the author let stand." if stands else ""
    state = (
        f"The manuscript was checked with proofkit: {left}, and has {asked}.{ruled} "
        "A program misses slips, and it looked for these kinds alone:"
    )
    return (state,)


def _unchecked(report: Report) -> tuple[str, ...]:
    return tuple(f"in this run: {notice.text}" for notice in report.notices if notice.unchecked)


def _opening(phrase: str) -> str:
    return phrase[:1].upper() + phrase[1:]
