"""What the table and the plain report say of a book's words, its phonics and its verse."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from proofkit.reading.phonics import Decodable
from proofkit.reading.verse.poem import Verse
from proofkit.reading_report import ReadingReport
from proofkit.reports.phrases import counted
from proofkit.reports.places import listed
from proofkit.reports.reading.setting import step_name

_MOST_GIFTS = 12
_MOST_LATE = 12


@dataclass(frozen=True, slots=True, kw_only=True)
class HardRow:
    """A word beyond the age: where it stands, what could stand for it, and what makes it hard."""

    word: str
    where: str
    simpler: str
    why: str


def hard_rows(report: ReadingReport) -> list[HardRow]:
    """The words beyond the age that are no gift, the rarest first."""
    return [
        HardRow(
            word=f"{hard.word} ({hard.count})" if hard.count > 1 else hard.word,
            where=where(report, hard.pages),
            simpler=" or ".join(hard.simpler),
            why=hard.why,
        )
        for hard in report.words_beyond
        if not hard.gift
    ]


def sentences_on_language(report: ReadingReport) -> Iterator[str]:
    """The gifts among the hard words, what can be sounded out, how the verse goes."""
    gifts = [f"{hard.word} ({hard.gift})" for hard in report.words_beyond if hard.gift]
    if gifts:
        yield f"Hard, but a gift: {_some(gifts, _MOST_GIFTS)}."
    if report.phonics:
        yield _phonics(report.phonics)
    yield from rhythm_sentences(report)
    if report.verse:
        yield _verse(report, report.verse)


def rhythm_sentences(report: ReadingReport) -> Iterator[str]:
    """Where a voice may stumble, and over which words; for the author's ear to judge."""
    prose = {page.number: page.prose for page in report.pages}
    for place in report.rhythm:
        words = [prose[span.page][span.start : span.end] for span in place.words]
        spot = where(report, [place.span.page])
        heard = ", ".join(f"“{word}”" for word in words)
        yield f"Read {f'{spot} ' if spot else ''}aloud: {place.kind} ({heard})."


def where(report: ReadingReport, pages: Iterable[int]) -> str:
    """The spreads or pages that hold these pages: "spreads 4 and 6"; "" where none are marked."""
    wanted = set(pages)
    names = [step_name(report, step) for step in report.steps if not wanted.isdisjoint(step.pages)]
    spreads = [name.removeprefix("spread ") for name in names]
    if len(names) > 1 and all(name.startswith("spread ") for name in names):
        return f"spreads {listed(spreads)}"
    return listed(names)


def _phonics(phonics: Decodable) -> str:
    late = [f"{word.word} ({word.count})" for word in phonics.not_yet]
    told = (
        f"At phase {phonics.phase} of Letters and Sounds a child can sound out {100 * phonics.share:.0f} of "
        f"100 words, and reads {100 * phonics.share_with_tricky:.0f} with the tricky words taught by then"
    )
    return f"{told}; not yet: {_some(late, _MOST_LATE)}." if late else f"{told}."


def _verse(report: ReadingReport, verse: Verse) -> str:
    metre = verse.metre.name if verse.metre else "in no clear metre"
    rhymed = f", rhymed {verse.scheme}" if verse.scheme else ""
    kind = "Verse" if verse.whole else f"Verse in {counted(len(verse.stanzas), 'place')}"
    faults = (
        ("line", "stumbles", "stumble", [line.span.page for line in verse.stumbles]),
        ("rhyme", "fails", "fail", [failed.span.page for failed in verse.failed_rhymes]),
        ("refrain", "differs", "differ", [odd.span.page for odd in verse.odd_refrains]),
    )
    told = [_fault(report, *fault) for fault in faults if fault[-1]]
    return f"{kind}: {metre}{rhymed}; {', '.join(told) if told else 'no line stumbles'}."


def _fault(report: ReadingReport, noun: str, does: str, do: str, pages: list[int]) -> str:
    places = where(report, pages)
    told = f"{counted(len(pages), noun)} {does if len(pages) == 1 else do}"
    return f"{told} ({places})" if places else told


def _some(parts: list[str], most: int) -> str:
    more = len(parts) - most
    return ", ".join(parts[:most]) + (f" and {more:,} more" if more > 0 else "")
