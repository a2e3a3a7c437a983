"""The galley cut into sheets: a spread each, or a strip of some paragraphs where a page runs on."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from proofkit.book import Role, count_words
from proofkit.report import PageReport, Report
from proofkit.reports.pacing import grade_shown
from proofkit.reports.phrases import counted
from proofkit.reports.places import page_name

STRIP = 250  # words: a printed page of the proof holds them with their slip
_PARAGRAPH_END = "\n\n"


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """A paragraph: characters ``start`` to ``end`` of a page, the ``number``th of it, from 1."""

    start: int
    end: int
    number: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Strip:
    """Some paragraphs of one page that stand together, an empty one if it has none; ``label`` names the page where it must be told."""

    page: PageReport
    blocks: tuple[Block, ...]
    label: str = ""

    @property
    def start(self) -> int:
        """Where on its page it begins."""
        return self.blocks[0].start


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """What is set under one heading: its ``name``, its measures in one phrase, its strips.

    ``part`` tells that it is only a part of a page that runs on.
    """

    name: str
    figures: str
    strips: tuple[Strip, ...]
    part: bool = False


def sheets_of(report: Report) -> tuple[Sheet, ...]:
    """The whole book in its order."""
    found: list[Sheet] = []
    for _place, group in groupby(report.pages, key=lambda page: page.spread or -page.number):
        pages = list(group)
        strips = [strip for page in pages for strip in _strips(page)]
        if len(strips) == len(pages):
            found.append(_whole(report, pages, strips))
        else:
            found += (_part(report, strip) for strip in strips)
    return tuple(found)


def _whole(report: Report, pages: Sequence[PageReport], strips: Sequence[Strip]) -> Sheet:
    spread = pages[0].spread
    if len(pages) == 1:
        name = page_name(pages[0]) if report.manuscript.paginated else "the whole text"
    else:
        name = f"spread {spread}"
        strips = [
            Strip(page=strip.page, blocks=strip.blocks, label=_label(strip.page, name))
            for strip in strips
        ]
    return Sheet(name=_capital(name), figures=_figures(report, pages), strips=tuple(strips))


def _label(page: PageReport, sheet: str) -> str:
    own = page_name(page)
    return "" if own == sheet else own


def _part(report: Report, strip: Strip) -> Sheet:
    """A strip of a page that is too long for one sheet."""
    first, last = strip.blocks[0].number, strip.blocks[-1].number
    which = f"paragraph {first}" if first == last else f"paragraphs {first}–{last}"
    words = count_words(strip.page.text[strip.start : strip.blocks[-1].end])
    name = f"{page_name(strip.page)}, {which}" if report.manuscript.paginated else which
    return Sheet(name=_capital(name), figures=counted(words, "word"), strips=(strip,), part=True)


def _capital(name: str) -> str:
    return name[:1].upper() + name[1:]


def _figures(report: Report, pages: Sequence[PageReport]) -> str:
    if not any(page.role is Role.STORY for page in pages):
        return "not counted as story"
    words = sum(page.words for page in pages)
    grade = _grade(report, pages) if words else None
    figures = counted(words, "word") if words else "no words"
    return f"{figures}; reading grade {grade_shown(grade)}" if grade is not None else figures


def _grade(report: Report, pages: Sequence[PageReport]) -> float | None:
    spread = next((s for s in report.reading.spreads if s.spread == pages[0].spread), None)
    reading = spread or pages[0].reading
    return reading.flesch_kincaid_grade if reading else None


def _strips(page: PageReport) -> Iterator[Strip]:
    """The page in one strip, or in several of about ``STRIP`` words if it runs on."""
    blocks: list[Block] = []
    words = 0
    whole = page.words <= 1.5 * STRIP and count_words(page.text) <= 1.5 * STRIP
    for block in _blocks(page.text):
        more = count_words(page.text[block.start : block.end])
        if blocks and not whole and words + more > STRIP:
            yield Strip(page=page, blocks=tuple(blocks))
            blocks, words = [], 0
        blocks.append(block)
        words += more
    yield Strip(page=page, blocks=tuple(blocks) or (Block(start=0, end=0, number=1),))


def _blocks(text: str) -> Iterator[Block]:
    """The paragraphs, numbered as places are; one of white space alone only counts."""
    at = 0
    for number, block in enumerate(text.split(_PARAGRAPH_END), 1):
        if block.strip():
            lead = len(block) - len(block.lstrip())
            yield Block(
                start=at + lead,
                end=at + len(block.rstrip()),
                number=number,
            )
        at += len(block) + len(_PARAGRAPH_END)
