from __future__ import annotations

from collections import Counter
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from proofkit.book import Book, Paragraph, Span
from proofkit.book import Page as BookPage
from proofkit.reports.proof.corrections import Correction, how_sure
from proofkit.reports.proof.galley import galley
from proofkit.reports.proof.marks import Kind
from proofkit.reports.proof.sheets import STRIP, Block, sheets_of
from tests.reports import goat
from tests.reports.slips import slip

TEXT = "One goat sat.\n\nTwo  goats sat down.\n\nThree."
BLOCKS = (
    Block(start=0, end=13, number=1),
    Block(start=15, end=35, number=2),
    Block(start=37, end=43, number=3),
)


def _mark(start: int, end: int, kind: Kind = Kind.DELETE, number: int = 1) -> Correction:
    return Correction(
        number=number,
        issue=slip(TEXT, TEXT[start:end], at=start),
        kind=kind,
        start=start,
        end=end,
        margin="",
        quote="",
        read="",
        why="",
        also="",
        sure="sure",
        short_key="k7f2",
    )


def _strokes(*marks: Correction) -> list[tuple[str, str]]:
    set_ = galley(TEXT, BLOCKS, marks, ())
    return [
        (piece.text, piece.strokes) for block in BLOCKS for piece in set_[block] if piece.strokes
    ]


places = st.tuples(st.integers(0, len(TEXT)), st.integers(0, len(TEXT))).map(sorted)


@given(st.lists(st.tuples(places, st.sampled_from(Kind)), max_size=6))
def test_whatever_is_marked_the_text_is_whole_and_each_mark_has_one_note(
    drawn: list[tuple[list[int], Kind]],
) -> None:
    marks = [_mark(a, b, kind, n) for n, ((a, b), kind) in enumerate(drawn, 1)]
    set_ = galley(TEXT, BLOCKS, marks, ())
    for block in BLOCKS:
        assert "".join(piece.text for piece in set_[block]) == TEXT[block.start : block.end]
    notes = Counter(note.number for block in BLOCKS for it in set_[block] for note in it.notes)
    assert notes == Counter(mark.number for mark in marks)


def test_marks_may_lie_over_one_another() -> None:
    assert _strokes(_mark(0, 8, Kind.QUERY), _mark(4, 13, number=2)) == [
        ("One ", "asked"),
        ("goat", "asked struck"),
        (" sat.", "struck"),
    ]


def test_a_mark_runs_on_into_the_next_paragraph() -> None:
    assert _strokes(_mark(9, 18)) == [("sat.", "struck"), ("Two", "struck")]


def test_one_character_is_slashed_and_no_stroke_is_drawn_through_spaces_at_the_ends() -> None:
    assert _strokes(_mark(12, 13)) == [(".", "slashed")]
    assert _strokes(_mark(3, 8)) == [("goat", "struck")]


def test_a_mark_between_paragraphs_is_made_on_the_second() -> None:
    set_ = galley(TEXT, BLOCKS, [_mark(14, 14, Kind.INSERT)], ())
    assert next(len(piece.notes) for piece in set_[BLOCKS[1]]) == 1


def test_a_note_comes_before_the_whole_word_that_its_mark_is_in() -> None:
    set_ = galley(TEXT, BLOCKS, [_mark(6, 7), _mark(3, 8, number=2), _mark(12, 13, number=3)], ())
    noted = [(it.text, [note.number for note in it.notes]) for it in set_[BLOCKS[0]] if it.notes]
    assert noted == [("go", [1, 2]), ("sat", [3])]


def test_another_place_is_noted_but_not_beside_the_mark_itself() -> None:
    mark = _mark(0, 3)
    set_ = galley(
        TEXT, BLOCKS, [mark], [(Span(page=1, start=at, end=at + 3), mark) for at in (9, 28)]
    )
    noted = {block.number for block in BLOCKS for piece in set_[block] if piece.also}
    assert noted == {2}


def test_a_long_text_is_cut_between_paragraphs_and_nothing_is_lost() -> None:
    text = "\n\n".join(f"Paragraph {n} has nine words in it, all told." for n in range(1, 101))
    page = BookPage(number=1, text=text, paragraphs=(Paragraph(start=0, end=len(text)),))
    sheets = sheets_of(
        goat.goat(Book(path="goat.md", title="", pages=(page,), paginated=False), issues=())
    )
    blocks = [block for sheet in sheets for strip in sheet.strips for block in strip.blocks]
    assert [text[block.start : block.end] for block in blocks] == text.split("\n\n")
    assert [block.number for block in blocks] == list(range(1, 101))
    assert all(int(sheet.figures.split()[0]) <= STRIP for sheet in sheets)
    assert all(sheet.part for sheet in sheets)
    assert all(
        a.strips[0].blocks[-1].number + 1 == b.strips[0].blocks[0].number
        for a, b in pairwise(sheets)
    )


def test_the_pages_of_one_spread_are_on_one_sheet_each_with_its_name() -> None:
    pages = tuple(
        BookPage(
            number=n,
            text="Nell slept.",
            paragraphs=(Paragraph(start=0, end=11),),
            spread=spread,
            label=f"Page {folio}",
        )
        for n, spread, folio in ((1, 1, 4), (2, 1, 5), (3, 2, 6))
    )
    sheets = sheets_of(goat.goat(Book(path="goat.md", title="", pages=pages), issues=()))
    assert [(sheet.name, [strip.label for strip in sheet.strips]) for sheet in sheets] == [
        ("Spread 1", ["page 4", "page 5"]),
        ("Page 6", [""]),
    ]


def test_how_sure_is_said_in_words() -> None:
    assert [how_sure(share) for share in (0.97, 0.9, 0.89, 0.7, 0.69, 0.35)] == [
        "sure",
        "sure",
        "likely",
        "likely",
        "worth a look",
        "worth a look",
    ]
