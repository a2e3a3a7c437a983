"""The text of every spread as it lies open, with its figures and what is marked in it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from proofkit.reading.bands import band_named
from proofkit.reading.words_beyond import HardWord
from proofkit.reading_report import ReadingReport, ReadPage, ReadSpread
from proofkit.reports.fault import one_line
from proofkit.reports.phrases import counted
from proofkit.reports.places import listed
from proofkit.reports.reading.marked_text import Piece, paragraphs
from proofkit.reports.reading.setting import duration, step_name


@dataclass(frozen=True, slots=True, kw_only=True)
class LeafPage:
    """One page of a leaf: the author's label, if it says more than the leaf's name, and its text."""

    label: str
    paragraphs: tuple[tuple[Piece, ...], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Leaf:
    """What lies open at once.

    ``figures``  its measures in one phrase
    ``reasons``  why it is worth working on
    ``slip``     its hard words, with what may stand instead, or why they may stay
    """

    name: str
    figures: str
    pages: tuple[LeafPage, ...]
    reasons: tuple[str, ...]
    slip: tuple[tuple[tuple[str, ...], str], ...]


def leaves_of(report: ReadingReport) -> tuple[Leaf, ...]:
    """A leaf for every step of the book, in order; none where no pages are marked."""
    pages = {page.number: page for page in report.pages}
    return tuple(_leaf(report, step, pages) for step in report.steps)


def leaf_of_page(report: ReadingReport) -> Mapping[int, int]:
    """For each page, by its place among the manuscript's, the place of its leaf, from 1."""
    return {page: at for at, step in enumerate(report.steps, 1) for page in step.pages}


def _leaf(report: ReadingReport, step: ReadSpread, pages: Mapping[int, ReadPage]) -> Leaf:
    here = [hard for hard in report.words_beyond if not set(hard.pages).isdisjoint(step.pages)]
    longest = band_named(report.age_band).longest_sentence.usual
    name = step_name(report, step)
    return Leaf(
        name=name,
        figures=_figures(step),
        pages=tuple(_page(pages[number], name, here, longest) for number in step.pages),
        reasons=step.reasons,
        slip=_slip(here),
    )


def _page(page: ReadPage, name: str, here: Sequence[HardWord], longest: int) -> LeafPage:
    spans = (span for hard in here for span in hard.spans if span.page == page.number)
    label = one_line(page.label)
    return LeafPage(
        label="" if label.lower() == name else label,
        paragraphs=paragraphs(page, [(span.start, span.end) for span in spans], longest),
    )


def _figures(step: ReadSpread) -> str:
    measures = step.measures
    if not measures.words:
        return "no words"
    return (
        f"{counted(measures.words, 'word')}, about {duration(step.seconds)} aloud; "
        f"{counted(measures.sentences, 'sentence')}, the longest of {counted(measures.longest_sentence, 'word')}"
    )


def _slip(here: Sequence[HardWord]) -> tuple[tuple[tuple[str, ...], str], ...]:
    """The words by what may be done; those that nothing is known for are on one line, the last."""
    slip: dict[str, list[str]] = {}
    for hard in sorted(here, key=lambda hard: not (hard.simpler or hard.gift)):
        slip.setdefault(_advice(hard), []).append(hard.word)
    return tuple((tuple(words), advice) for advice, words in slip.items())


def _advice(hard: HardWord) -> str:
    """What may be done about a hard word, in a phrase: "try boat or ship", "may stay: met 4 times"."""
    instead = f"try {_either(hard.simpler)}" if hard.simpler else ""
    if hard.gift:
        stays = f"may well stay: {hard.gift}"
        return f"{stays}; or {instead}" if instead else stays
    return instead or "no simpler word is at hand"


def _either(words: Sequence[str]) -> str:
    return listed(list(words)).replace(" and ", " or ")
