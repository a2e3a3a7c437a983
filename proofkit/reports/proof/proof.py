"""The marked proof as a page for the browser: one file that fetches nothing and prints as it stands.

Without its script it shows the same; only the filters and the count of what is left need it.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path, PurePath

from proofkit.report import Report
from proofkit.reports.html.sealed import sealed_page
from proofkit.reports.phrases import about, confirmable, quoted, since_last, tally, title
from proofkit.reports.proof.corrections import Correction, corrections
from proofkit.reports.proof.galley import Piece, galley
from proofkit.reports.proof.marks import Kind
from proofkit.reports.proof.sheets import Block, Sheet, Strip, sheets_of

_BESIDE_THIS = Path(__file__).parent
_LONG = 10_000  # words; what has more would be slow to set out all at once
_MEANINGS = {
    Kind.INSERT: "put in what stands in the margin, at the caret",
    Kind.DELETE: "take out what is struck through",
    Kind.DELETE_CLOSE: "take it out, and let the letters meet",
    Kind.SUBSTITUTE: "put what stands in the margin for what is struck through",
    Kind.CLOSE_UP: "no space here",
    Kind.INSERT_SPACE: "a space here",
    Kind.REDUCE_SPACE: "less space here",
    Kind.TRANSPOSE: "change the two about",
    Kind.CAPITAL: "a capital letter",
    Kind.LOWER_CASE: "a small letter",
    Kind.NEW_PARAGRAPH: "begin a new paragraph",
    Kind.RUN_ON: "no new paragraph; run on",
    Kind.STET: "let it stand",
    Kind.QUERY: "the author is asked",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class SetParagraph:
    """A paragraph as it is set, with its place among those of its page."""

    number: int
    pieces: tuple[Piece, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SetStrip:
    """A strip as it is set; ``label`` names its page where it must be told."""

    label: str
    paragraphs: tuple[SetParagraph, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SetSheet:
    """A sheet as it is set, and its slip: each correction with its place on the sheet.

    ``part`` tells that it is only a part of a page that runs on.
    """

    name: str
    figures: str
    strips: tuple[SetStrip, ...]
    slip: tuple[tuple[str, Correction], ...]
    part: bool


def as_proof(report: Report, *, show_stet: bool = False) -> str:
    """The whole page; with ``show_stet`` the issues that the author lets stand are marked too."""
    found = corrections(report, show_stet=show_stet)
    used = {each.kind for each in found} | ({Kind.QUERY} if any(c.asks for c in found) else set())
    return sealed_page(
        _BESIDE_THIS,
        report=report,
        title=title(report),
        about=about(report),
        since=since_last(report),
        tally=tally(report),
        sheets=_set(report, found),
        corrections=found,
        families=sorted(Counter(each.family for each in found).items()),
        tiers=Counter(each.tier for each in found),
        legend=[(kind, meaning) for kind, meaning in _MEANINGS.items() if kind in used],
        confirm=[confirmable(report, word) for word in report.words_to_confirm],
        stet=f"proofkit stet {quoted(report.manuscript.path)}",
        long=report.manuscript.words > _LONG,
        file_name=PurePath(report.manuscript.path).name,
        kinds=Kind,
    )


def _set(report: Report, found: Sequence[Correction]) -> list[SetSheet]:
    sheets = sheets_of(report)
    set_ = _paragraphs(report, sheets, found)
    made: dict[int, list[Correction]] = {}
    for each in found:
        made.setdefault(each.issue.page, []).append(each)
    return [
        SetSheet(
            name=sheet.name,
            figures=sheet.figures,
            strips=tuple(
                SetStrip(
                    label=strip.label,
                    paragraphs=tuple(
                        SetParagraph(number=block.number, pieces=set_[strip.page.number, block])
                        for block in strip.blocks
                    ),
                )
                for strip in sheet.strips
            ),
            slip=tuple(_slip(strips=sheet.strips, set_=set_)),
            part=sheet.part,
        )
        for sheet in sheets
    ]


def _paragraphs(
    report: Report, sheets: Sequence[Sheet], found: Sequence[Correction]
) -> Mapping[tuple[int, Block], tuple[Piece, ...]]:
    """Every paragraph in pieces, by its page and itself."""
    blocks: dict[int, list[Block]] = {}
    for sheet in sheets:
        for strip in sheet.strips:
            blocks.setdefault(strip.page.number, []).extend(strip.blocks)
    set_: dict[tuple[int, Block], tuple[Piece, ...]] = {}
    for number, here in blocks.items():
        pieces = galley(
            report.pages[number - 1].text,
            here,
            [each for each in found if each.issue.page == number],
            [(span, each) for each in found for span in each.issue.related if span.page == number],
        )
        set_ |= {(number, block): pieces[block] for block in here}
    return set_


def _slip(
    strips: Sequence[Strip], set_: Mapping[tuple[int, Block], tuple[Piece, ...]]
) -> list[tuple[str, Correction]]:
    rows = []
    for strip in strips:
        for block in strip.blocks:
            place = f"paragraph {block.number}"
            place = f"{strip.label}, {place}" if strip.label else place
            for piece in set_[strip.page.number, block]:
                rows += [(place, each) for each in piece.notes]
    return rows
