from __future__ import annotations

import unicodedata

import pytest

from proofkit.book import Span
from proofkit.rulings.passage import alike, likeness, passage_at, passage_in, written

PAGES = (
    "Page one ends with a goose upon the gate.",
    "She went up the the hill and\nlooked for “the moon” behind the mill, and it was there.",
    "“Good ››evening‹‹,” said Tom.",
)
THE_THE = Span(page=2, start=12, end=19)


def test_it_is_written_on_one_line_with_the_words_at_fault_between_marks() -> None:
    assert written(PAGES, THE_THE) == (
        "… a goose upon the gate. She went up ›the the‹ hill and looked for “the moon” behind the …"
    )


@pytest.mark.parametrize(
    "span",
    [
        THE_THE,
        Span(page=1, start=0, end=4),
        Span(page=3, start=0, end=len(PAGES[2])),
        Span(page=2, start=28, end=29),
        Span(page=2, start=4, end=4),
        Span(page=3, start=5, end=18),
        Span(page=2, start=0, end=len(PAGES[1])),
    ],
)
def test_what_is_written_is_read_again_as_the_same_place(span: Span) -> None:
    line = written(PAGES, span)
    assert "\n" not in line
    kept = passage_in(line)
    assert kept is not None
    assert kept.quote == passage_at(PAGES, span).quote
    assert likeness(kept, passage_at(PAGES, span)) == 1
    assert alike(kept, passage_at(PAGES, span))


def test_a_line_without_marks_is_no_passage() -> None:
    assert passage_in("She went up the the hill") is None
    assert passage_in("") is None


def test_the_end_of_a_page_is_no_end_of_the_surroundings() -> None:
    kept = passage_in(written(PAGES, THE_THE))
    assert kept is not None
    joined = (f"{PAGES[0]} {PAGES[1]}",)
    start = joined[0].index("the the")
    assert likeness(kept, passage_at(joined, Span(page=1, start=start, end=start + 7))) == 1


def test_curly_marks_and_spaces_make_no_difference() -> None:
    kept = passage_in("It was “›don't  do‹” again and again")
    found = passage_at(("it was don’t\ndo again and again",), Span(page=1, start=7, end=15))
    assert kept is not None
    assert alike(kept, found)


def test_an_accent_is_the_same_however_it_is_encoded() -> None:
    kept = passage_in("Then Zoë ate the ›crêpe‹ with Zoë")
    text = unicodedata.normalize("NFD", "Then Zoë ate the crêpe with Zoë")
    found = passage_at((text,), Span(page=1, start=18, end=24))
    assert kept is not None
    assert kept.quote == found.quote
    assert likeness(kept, found) == 1


def test_other_words_at_fault_or_other_surroundings_are_another_place() -> None:
    kept = passage_in("She went up ›the the‹ hill and looked for the moon")
    assert kept is not None
    text = "She went up a a hill and looked for the moon"
    assert not alike(kept, passage_at((text,), Span(page=1, start=12, end=15)))
    text = "Down came the snow on the the barn and it was cold"
    assert not alike(kept, passage_at((text,), Span(page=1, start=22, end=29)))


def test_one_side_that_is_whole_tells_the_place_whatever_was_put_in_on_the_other() -> None:
    kept = passage_in("She looked at the moon and ›the the‹ goose went up the hill again")
    assert kept is not None
    text = "Then there was a great deal of noise, and a bell. The the goose went up the hill again."
    assert alike(
        kept, passage_at((text.replace("The the", "the the"),), Span(page=1, start=50, end=57))
    )
    text = "Then there was a great deal of noise, and a bell. the the cat went up the stairs again."
    assert not alike(kept, passage_at((text,), Span(page=1, start=50, end=57)))


def test_a_long_passage_is_known_by_its_ends_with_a_word_of_it_changed() -> None:
    page = " ".join(f"word{n}" for n in range(60))
    line = written((page,), Span(page=1, start=0, end=len(page)))
    assert len(line) < 120
    kept = passage_in(line)
    mended = page.replace("word2 ", "mended ").replace("word30 ", "")
    assert kept is not None
    assert alike(kept, passage_at((mended,), Span(page=1, start=0, end=len(mended))))
    other = page.replace("word", "other")
    assert not alike(kept, passage_at((other,), Span(page=1, start=0, end=len(other))))
