from __future__ import annotations

import re

from proofkit.book import Book, Page, Paragraph, Role
from proofkit.reading.measure import measure
from proofkit.reading_report import ReadPage, reading_report_of
from proofkit.reports.reading.marked_text import Piece, paragraphs
from proofkit.settings import English
from tests.reports import goat

TEXT = (
    "Nell climbed the stair.\n\nUp she went, and up, and round, and up, to the lamp.\nThen she sat."
)


def _page(text: str) -> ReadPage:
    return _read(goat.book(text))


def _read(book: Book) -> ReadPage:
    report = reading_report_of(book, measure(book), english=English.BRITISH, age_band="picture")
    return report.pages[0]


def _shown(pieces: tuple[Piece, ...]) -> str:
    """[hard], {aside}, <long sentence:its words>."""
    shown = ""
    for piece in pieces:
        text = f"[{piece.text}]" if piece.hard else piece.text
        text = f"{{{text}}}" if piece.aside else text
        shown += "<" * piece.opens + text + (f":{piece.closes}>" if piece.closes else "")
    return shown


def test_paragraphs_are_cut_at_hard_words_and_long_sentences() -> None:
    hard = re.search("lamp", TEXT)
    assert hard
    found = paragraphs(_page(TEXT), [hard.span()], longest=10)
    assert [_shown(pieces) for pieces in found] == [
        "Nell climbed the stair.",
        "<Up she went, and up, and round, and up, to the [lamp].:12>\nThen she sat.",
    ]


def test_nothing_of_the_text_is_lost_or_doubled() -> None:
    found = paragraphs(_page(TEXT), [(0, 4), (5, 12)], longest=3)
    assert "\n\n".join("".join(p.text for p in pieces) for pieces in found) == TEXT


def test_what_is_no_story_is_an_aside() -> None:
    text = "Art: a gull on a rail.\n\nNell slept."
    end = text.index("\n")
    page = Page(
        number=1,
        text=text,
        paragraphs=(
            Paragraph(start=0, end=end, role=Role.NOTE),
            Paragraph(start=end + 2, end=len(text)),
        ),
    )
    book = Book(path="a.md", title="", pages=(page,))
    note, story = paragraphs(_read(book), (), longest=2)
    assert all(piece.aside for piece in note)
    assert "".join(piece.text for piece in note) == "Art: a gull on a rail."
    assert not any(piece.aside for piece in story)


def test_a_page_without_a_word_has_no_paragraphs() -> None:
    assert paragraphs(_page(""), (), longest=10) == ()
