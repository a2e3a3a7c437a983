from __future__ import annotations

from dataclasses import replace

from proofkit.book import Span
from proofkit.reading.measure import measure
from proofkit.reading.verse.poem import (
    FailedRhyme,
    Foot,
    Line,
    Metre,
    OddRefrain,
    Stanza,
    Stumble,
    StumbleKind,
    Verse,
)
from proofkit.reading_report import ReadingReport, reading_report_of
from proofkit.reports.reading.verse_setting import SetStanza, about_verse, stanzas
from proofkit.settings import English
from tests.reports import goat

TEXT = "The goat went up the winding stair\nand met a gull with tousled fur."
FIRST, SECOND = (line for line in TEXT.split("\n"))
START = len(FIRST) + 1
PAGE = 2  # after the title page


def _span(start: int, end: int) -> Span:
    return Span(page=PAGE, start=start, end=end)


def _lines() -> tuple[Line, Line]:
    return (
        Line(span=_span(0, len(FIRST)), text=FIRST, syllables=8, stresses="x/x/x/x/", letter="A"),
        Line(
            span=_span(START, len(TEXT)), text=SECOND, syllables=8, stresses="x/x/x/x/", letter="x"
        ),
    )


def _verse(*lines: Line) -> Verse:
    return Verse(
        stanzas=(Stanza(page=PAGE, lines=lines, scheme="Ax"),),
        metre=Metre(foot=Foot.IAMBIC, beats=(4,)),
        scheme="AABB",
        whole=True,
    )


def _set(verse: Verse) -> SetStanza:
    (stanza,) = stanzas(_report(verse))
    return stanza


def _report(verse: Verse | None) -> ReadingReport:
    book = goat.book(TEXT)
    return reading_report_of(
        book, measure(book), english=English.BRITISH, age_band="picture", verse=verse
    )


def _stumbling(kind: StumbleKind, beats: int, span: Span) -> SetStanza:
    first, second = _lines()
    stumble = Stumble(kind=kind, span=span, beats=beats, expected=4, surprise=3.0)
    return _set(_verse(first, replace(second, stumble=stumble)))


def test_prose_has_none() -> None:
    assert stanzas(_report(None)) == ()


def test_a_line_that_goes_well_shows_its_beats_and_its_rhyme() -> None:
    first, second = _set(_verse(*_lines())).lines
    assert (first.letter, first.beats, first.stresses) == ("A", "4 beats", "·/·/·/·/")
    assert second.letter == ""  # it rhymes with none
    assert first.remarks == second.remarks == ()


def test_without_a_metre_syllables_are_counted() -> None:
    first, second = (replace(line, stresses="") for line in _lines())
    assert _set(_verse(first, second)).lines[0].beats == "8 syllables"


def test_a_stumbling_line_has_its_own_beats_and_says_what_is_wrong() -> None:
    whole = _span(START, len(TEXT))
    short = _stumbling(StumbleKind.SHORT, 3, whole)
    assert (short.lines[1].beats, short.lines[1].stresses) == ("3 beats", "")
    assert short.lines[1].remarks == ("1 beat too few: its neighbours lead you to expect 4",)
    assert short.remarks == 1
    long = _stumbling(StumbleKind.LONG, 6, whole)
    assert long.lines[1].remarks == ("2 beats too many: its neighbours lead you to expect 4",)
    at = TEXT.index("tousled")
    stress = _stumbling(StumbleKind.STRESS, 4, _span(at, at + len("tousled")))
    assert stress.lines[1].remarks == ("the beat falls on the wrong part of “tousled”",)
    assert stress.lines[0].remarks == ()


def test_failed_rhymes_and_odd_refrains_stand_at_their_lines() -> None:
    fur, stair = TEXT.index("fur"), TEXT.index("stair")
    verse = replace(
        _verse(*_lines()),
        failed_rhymes=(
            FailedRhyme(
                span=_span(fur, fur + 3),
                word="fur",
                partner_span=_span(stair, stair + 5),
                partner="stair",
            ),
        ),
        odd_refrains=(
            OddRefrain(
                span=_span(0, len(FIRST)),
                word="winding",
                usual="The goat went up the creaking stair",
                instead="creaking",
                places=(_span(0, 3),),
            ),
        ),
    )
    first, second = _set(verse).lines
    assert first.remarks == ("elsewhere the refrain is “The goat went up the creaking stair”",)
    assert second.remarks == ("“fur” doesn’t rhyme with “stair”, and by the scheme it should",)


def test_the_metre_and_the_scheme_are_told_in_words() -> None:
    verse = _verse(*_lines())
    assert (
        about_verse(verse) == "The story is in verse, iambic tetrameter. Most stanzas rhyme AABB."
    )
    unclear = replace(verse, metre=None, scheme="", whole=False)
    assert (
        about_verse(unclear) == "There is verse in the story, in no metre that is clear throughout."
    )
