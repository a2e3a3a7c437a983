"""The verse as it is set on the page: every stanza with its rhymes and beats, and what to listen to."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from proofkit.book import Span
from proofkit.reading.verse.poem import FailedRhyme, Line, OddRefrain, Stumble, StumbleKind, Verse
from proofkit.reading_report import ReadingReport
from proofkit.reports.fault import one_line
from proofkit.reports.phrases import counted


@dataclass(frozen=True, slots=True, kw_only=True)
class SetLine:
    """A line: its letter in the scheme, its text, its beats in words and as drawn, what to listen to."""

    letter: str
    text: str
    beats: str
    stresses: str
    remarks: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SetStanza:
    """A stanza: the page that it begins on, its rhyme scheme, its lines."""

    page: int
    scheme: str
    lines: tuple[SetLine, ...]

    @property
    def remarks(self) -> int:
        """How many of its lines there is something to listen to in."""
        return sum(1 for line in self.lines if line.remarks)


def about_verse(verse: Verse) -> str:
    """The metre and the scheme in a sentence or two."""
    kind = "The story is in verse" if verse.whole else "There is verse in the story"
    metre = f", {verse.metre.name}" if verse.metre else ", in no metre that is clear throughout"
    rhymed = f"Most stanzas rhyme {verse.scheme}." if verse.scheme else ""
    return f"{kind}{metre}. {rhymed}".strip()


def stanzas(report: ReadingReport) -> tuple[SetStanza, ...]:
    """All the verse of the book; none where it is prose."""
    if report.verse is None:
        return ()
    remarks = _remarks(report, report.verse)
    return tuple(
        SetStanza(
            page=stanza.page,
            scheme=stanza.scheme,
            lines=tuple(_line(line, remarks) for line in stanza.lines),
        )
        for stanza in report.verse.stanzas
    )


def _line(line: Line, remarks: Mapping[Span, list[str]]) -> SetLine:
    here = line.span
    return SetLine(
        letter="" if line.letter == "x" else line.letter,
        text=line.text,
        beats=_beats(line),
        # What stumbles does not go as the metre would have it.
        stresses="" if line.stumble else line.stresses.replace("x", "·"),
        remarks=tuple(
            remark
            for place, told in remarks.items()
            if place.page == here.page and here.start <= place.start < here.end
            for remark in told
        ),
    )


def _beats(line: Line) -> str:
    if line.stumble:
        return counted(line.stumble.beats, "beat")
    return counted(line.beats, "beat") if line.stresses else counted(line.syllables, "syllable")


def _remarks(report: ReadingReport, verse: Verse) -> Mapping[Span, list[str]]:
    found: dict[Span, list[str]] = defaultdict(list)
    for place, remark in _all_remarks(report, verse):
        found[place].append(remark)
    return found


def _all_remarks(report: ReadingReport, verse: Verse) -> Iterator[tuple[Span, str]]:
    pages = {page.number: page.text for page in report.pages}
    for line in verse.stumbles:
        if line.stumble:
            place = line.stumble.span
            quote = pages.get(place.page, "")[place.start : place.end]
            yield place, _stumbles(line.stumble, one_line(quote))
    for failed in verse.failed_rhymes:
        yield failed.span, _fails(failed)
    for odd in verse.odd_refrains:
        yield odd.span, _differs(odd)


def _stumbles(stumble: Stumble, quote: str) -> str:
    if stumble.kind is StumbleKind.STRESS:
        return f"the beat falls on the wrong part of “{quote}”"
    if stumble.kind is StumbleKind.CROWDED:
        return "it doesn’t fall into the beat of its neighbours"
    missing = abs(stumble.expected - stumble.beats)
    much = "too few" if stumble.kind is StumbleKind.SHORT else "too many"
    return (
        f"{counted(missing, 'beat')} {much}: its neighbours lead you to expect {stumble.expected}"
    )


def _fails(failed: FailedRhyme) -> str:
    return f"“{failed.word}” doesn’t rhyme with “{failed.partner}”, and by the scheme it should"


def _differs(odd: OddRefrain) -> str:
    return f"elsewhere the refrain is “{one_line(odd.usual)}”"
