from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from proofkit.book import Book
from proofkit.words.quotations import Quotation, quotations_of
from tests.marked import book_of


def said(book: Book) -> list[str]:
    """The words of each speech, paragraphs joined by a bar."""
    return ["|".join(book.quote(p) for p in q.parts) for q in quotations_of(book).speech]


def broken(book: Book) -> list[Quotation]:
    return [q for q in quotations_of(book).speech if not q.whole]


@pytest.mark.parametrize(
    ("text", "speeches"),
    [
        ('"Come in," said the toad. "Sit down."', ["Come in,", "Sit down."]),
        ("“Come in,” said the toad. “Sit down.”", ["Come in,", "Sit down."]),
        ("'Come in,' said the toad. 'Sit down.'", ["Come in,", "Sit down."]),
        ("‘Come in,’ said the toad. ‘Don’t sit down.’", ["Come in,", "Don’t sit down."]),
        # Apostrophes at the edges of words.
        (
            "'It's the dogs' bowl,' said Tam. ''Tis theirs.'",
            ["It's the dogs' bowl,", "'Tis theirs."],
        ),
        ("'I'm goin' to th' fair,' said Tam.", ["I'm goin' to th' fair,"]),
        ("'Rock 'n' roll!' cried Tam at six o'clock.", ["Rock 'n' roll!"]),
        (
            "'I 'ung it on that 'ook, an' it's gorn,' he said.",
            ["I 'ung it on that 'ook, an' it's gorn,"],
        ),
        # Marks in marks.
        ("\"Gran said 'no' to me,\" said Tam.", ["Gran said 'no' to me,"]),
        ("'Gran said \"no\" to me,' said Tam.", ['Gran said "no" to me,']),
        # Two apostrophes for one mark; no space beside it; a mark on the wrong side of the space.
        ("''Come in,'' said the toad.", ["Come in,"]),
        ('He said,"Come in.""No," said Tam.', ["Come in.", "No,"]),
        ('"Wait," said the toad to Tam," I will come too."', ["Wait,", " I will come too."]),
        ('The plank was 5" wide. "Too thin," said Tam.', ["Too thin,"]),
    ],
)
def test_reads_speech(text: str, speeches: list[str]) -> None:
    book = book_of(text)
    assert said(book) == speeches
    assert broken(book) == []


def test_speech_runs_over_pages_without_a_second_opening_mark() -> None:
    book = book_of('"I was born on a hill', 'and I learnt to climb there," said the goat.')
    assert said(book) == ["I was born on a hill|and I learnt to climb there,"]
    assert broken(book) == []


def test_each_paragraph_of_a_long_speech_opens_and_only_the_last_closes() -> None:
    book = book_of('"I was born here.\n\n"I grew up here.', '"And here I stay," said the goat.')
    (speech,) = quotations_of(book).speech
    assert speech.whole
    assert len(speech.reopenings) == 2
    assert len(speech.parts) == 3


def test_a_lost_closing_mark_costs_its_own_speech_only() -> None:
    book = book_of('"I am late, said Tam. "You are," said Gran.\n\nThey ran. "Wait!" cried Tam.')
    assert [q.opening is not None and q.closing is None for q in quotations_of(book).speech] == [
        True,
        False,
        False,
    ]


def test_a_lost_opening_mark_costs_its_own_speech_only() -> None:
    book = book_of('I am late," said Tam. "You are," said Gran.')
    assert [q.opening is None for q in quotations_of(book).speech] == [True, False]


def test_knows_who_speaks_where() -> None:
    text = '"Come in," said the toad.'
    quotations = quotations_of(book_of(text))
    assert quotations.speaks(1, text.index("Come"))
    assert not quotations.speaks(1, text.index("said"))


def test_dialect_without_speech_in_single_marks_leaves_a_double_book_alone() -> None:
    book = book_of("\"'E took 'is 'at off,\" said Tam. \"'Ow strange!\"")
    assert said(book) == ["'E took 'is 'at off,", "'Ow strange!"]
    assert broken(book) == []


@given(st.lists(st.text(alphabet="ab ,.!?\"'“”‘’\n-", max_size=40), max_size=5))
def test_never_fails_and_its_speeches_never_overlap(pages: list[str]) -> None:
    quotations = quotations_of(book_of(*pages))
    parts = [part for q in quotations.speech for part in q.parts]
    assert all(a.page < b.page or a.end <= b.start for a, b in pairwise(parts))
